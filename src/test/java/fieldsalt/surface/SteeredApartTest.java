package fieldsalt.surface;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.gaussian.MixedModel;
import fieldsalt.geo.PlaceM;
import fieldsalt.surface.choice.DriftTrial;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.kernel.Kriging;
import fieldsalt.surface.site.Drift;
import fieldsalt.surface.site.DriftGaps;
import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Points;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Steered fields and the others are solved apart, each with what the other says of the offsets that
 * they share. Under known covariances that is the same as one solve of all.
 */
class SteeredApartTest {
  private static final CovarianceModel STEERED =
      new CovarianceModel(new Exponential(90), 0.05, 0.01);
  private static final CovarianceModel OTHERS =
      new CovarianceModel(new Exponential(300), 0.4, 0.05);

  private static final Drift EAST =
      new Drift() {
        @Override
        public String name() {
          return "east";
        }

        @Override
        public double at(PlaceM place) {
          return place.xM() > 1000 ? Double.NaN : Math.sin(place.xM() / 70);
        }
      };

  private static SiteReadings readings() {
    Random random = new Random(11);
    List<SiteReadings.Site> sites = new ArrayList<>();
    List<SiteReadings.Row> rows = new ArrayList<>();
    for (int s = 0; s < 40; s++) {
      double west = s < 20 ? 0 : 2000;
      double x = west + 400 * random.nextDouble();
      sites.add(
          SurfaceCases.site("s" + (100 + s), s < 20 ? "a" : "b", x, 400 * random.nextDouble()));
      double z = 1 + 0.5 * random.nextGaussian();
      rows.add(SurfaceCases.cheap(s, z + 0.3, 0.02, 0));
      if (s % 7 == 0) {
        rows.add(SurfaceCases.paste(s, z, 0.01));
      }
    }
    return new SiteReadings(
        "ECe",
        "dS/m",
        Scale.LOG,
        sites,
        rows,
        List.of("laboratory"),
        new double[][] {{0.06}},
        List.of());
  }

  private static Observations part(String field, List<Drift> drifts) {
    return Observations.of(DriftTrial.only(readings(), s -> s.field().equals(field)), drifts);
  }

  /** Both fields in one model: its shared effects are the drift's slope, 0 in b, and the offset. */
  private static MixedModel together(Observations a, Observations b) {
    return new MixedModel(
        List.of(block(a, STEERED, a.sharedDesign(0)), block(b, OTHERS, withoutSlope(b))), 1);
  }

  private static double[][] withoutSlope(Observations b) {
    double[][] own = b.sharedDesign(0);
    return new double[][] {new double[own[0].length], own[0]};
  }

  private static MixedModel.Block block(
      Observations data, CovarianceModel model, double[][] shared) {
    FieldRows rows = data.parts().get(0);
    int n = rows.rows().size();
    double[][] d = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        int s = rows.siteOf()[i];
        int t = rows.siteOf()[j];
        double h = Math.hypot(rows.x()[s] - rows.x()[t], rows.y()[s] - rows.y()[t]);
        d[i][j] =
            (s == t ? model.pointVariance() : model.covariance(h)) + (i == j ? rows.own()[i] : 0);
      }
    }
    double[] constant = new double[n];
    Arrays.fill(constant, 1);
    return new MixedModel.Block(d, new double[][] {constant}, shared, rows.values());
  }

  @Test
  void apartIsAsTogether() {
    Observations a = part("a", List.of(EAST));
    Observations b = part("b", List.of());
    MixedModel all = together(a, b);
    Solved steered = Solved.of(a.withPrior(Solved.of(b, OTHERS).ofOffsets()), STEERED);
    Solved others = Solved.of(b.withPrior(Solved.of(a, STEERED).ofOffsets()), OTHERS);
    assertThat(steered.solution().sharedEffects())
        .containsExactly(all.sharedEffects(), within(1e-10));
    assertThat(others.solution().sharedEffects()[0])
        .isCloseTo(all.sharedEffects()[1], within(1e-10));
    assertThat(others.solution().sharedCovariance()[0][0])
        .isCloseTo(all.sharedCovariance()[1][1], within(1e-12));

    Points points = SurfaceCases.points(b, 0, 2100, 130);
    Predictor.Predicted apart = new Kriging(others).predict(points);
    double[][] shared = {{0}, {0}};
    double[][] one = {{1}};
    double mean =
        all.predict(1, points.covariancesWith(b.parts().get(0), OTHERS), one, shared).mean()[0];
    assertThat(apart.mean()[0]).isCloseTo(mean, within(1e-10));
  }

  /** A site without a value takes the mean of its field's others, and is less sure by the slope. */
  @Test
  void aSiteWithoutAValueOfTheDrift() {
    SiteReadings all = readings();
    Drift gap =
        new Drift() {
          @Override
          public String name() {
            return "gap";
          }

          @Override
          public double at(PlaceM place) {
            return place.equals(all.sites().get(3).place()) ? Double.NaN : EAST.at(place);
          }
        };
    SiteReadings own = DriftTrial.only(all, s -> s.field().equals("a"));
    Observations data = DriftGaps.filled(Observations.of(own, List.of(gap)));
    FieldRows rows = data.parts().get(0);
    double[] raw = rows.sites().stream().mapToDouble(s -> EAST.at(s.place())).toArray();
    double sum = 0;
    for (int s = 0; s < raw.length; s++) {
      sum += s == 3 ? 0 : raw[s];
    }
    double mean = sum / 19;
    double square = 0;
    for (int s = 0; s < raw.length; s++) {
      square += s == 3 ? 0 : (raw[s] - mean) * (raw[s] - mean);
    }
    double spread = Math.sqrt(square / 19);
    assertThat(rows.drift()[0][3]).isCloseTo(0, within(1e-12));
    assertThat(rows.drift()[0][0]).isCloseTo((raw[0] - mean) / spread, within(1e-12));
    assertThat(rows.siteError()[0]).isZero();
    double slope = slope(rows);
    assertThat(rows.siteError()[3]).isCloseTo(slope * slope * 19 / 18, within(1e-12));
  }

  /** Least squares of one value a site, rows weighted by their precision, on the filled drift. */
  private static double slope(FieldRows rows) {
    double[] value = new double[20];
    double[] weight = new double[20];
    for (int r = 0; r < rows.rows().size(); r++) {
      double w = 1 / rows.own()[r];
      value[rows.siteOf()[r]] += w * rows.rows().get(r).value();
      weight[rows.siteOf()[r]] += w;
    }
    double mean = 0;
    for (int s = 0; s < 20; s++) {
      value[s] /= weight[s];
      mean += value[s] / 20;
    }
    double xy = 0;
    double xx = 0;
    for (int s = 0; s < 20; s++) {
      xy += rows.drift()[0][s] * (value[s] - mean);
      xx += rows.drift()[0][s] * rows.drift()[0][s];
    }
    return xy / xx;
  }
}
