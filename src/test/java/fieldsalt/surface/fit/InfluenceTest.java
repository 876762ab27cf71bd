package fieldsalt.surface.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Finding;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.site.SurveyReading;
import fieldsalt.surface.Surface;
import fieldsalt.surface.SurfaceCases;
import fieldsalt.surface.SurfaceFitter;
import fieldsalt.surface.choice.SurfaceSettings;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Sites on which the fit hangs: the model is fitted again without each suspect. */
class InfluenceTest {
  private static final int PLANTED = 17;

  /** 60 sites of a smooth field; one reading lies off by so much. */
  private static SiteReadings smooth(double off, Scale scale) {
    Random random = new Random(4);
    double[] x = random.doubles(60, 0, 1000).toArray();
    double[] y = random.doubles(60, 0, 1000).toArray();
    double[] z = new double[60];
    for (int i = 0; i < 60; i++) {
      z[i] = 1 + 0.6 * Math.sin(x[i] / 180) * Math.cos(y[i] / 150) + 0.1 * random.nextGaussian();
    }
    z[PLANTED] += off;
    return SurfaceCases.exact(scale, x, y, z);
  }

  private static SiteReadings smooth(double off) {
    return smooth(off, Scale.NATURAL);
  }

  /** On the scale of ln a reading that far off is in doubt, and the fit does not depend on it. */
  @Test
  void aPlantedSlipIsInDoubtAndDoesNotMoveTheFit() {
    SurfaceReport report = fitted(smooth(4, Scale.LOG), List.of()).report();
    assertThat(report.details().influential()).isEmpty();
    assertThat(report.details().doubtful()).hasSize(1);
    SurfaceDetails.Doubtful doubtful = report.details().doubtful().get(0);
    assertThat(doubtful.siteId()).isEqualTo("s00017");
    assertThat(doubtful.chance()).isGreaterThan(0.95);
    assertThat(doubtful.value()).isGreaterThan(3 * doubtful.high());
    SiteReadings all = smooth(4, Scale.LOG);
    SiteReadings rest = Influence.withoutSite(all, all.sites().get(PLANTED));
    SurfaceReport.FittedVariogram without = fitted(rest, List.of()).report().variogram();
    double sill = without.partialSill() + without.microScale();
    double with = report.variogram().partialSill() + report.variogram().microScale();
    assertThat(with / sill).isCloseTo(1, within(0.1));
    assertThat(report.findings())
        .filteredOn(f -> f.code().id().equals("doubtful-reading"))
        .extracting(Finding::where)
        .containsExactly("site s00017");
  }

  private static Surface fitted(SiteReadings readings, List<SurveyReading> survey) {
    return SurfaceFitter.fit(
        readings,
        List.of(SurfaceCases.rectangle("one", 0, 0, 1000, 1000)),
        survey,
        List.of(),
        SurfaceSettings.defaults());
  }

  private static List<Finding> hanging(Surface surface) {
    return surface.report().findings().stream()
        .filter(f -> f.code().id().equals("fit-depends-on-site"))
        .toList();
  }

  @Test
  void aPlantedOutlierIsNamedWithTheFitWithoutIt() {
    Surface surface = fitted(smooth(4), List.of());
    List<SurfaceDetails.Influence> influential = surface.report().details().influential();
    assertThat(influential).hasSize(1);
    SurfaceDetails.Influence one = influential.get(0);
    assertThat(one.siteId()).isEqualTo("s00017");
    assertThat(one.standardisedError()).isGreaterThan(3);
    // the fit of the input without the planted site, which may choose another shape of model
    SiteReadings rest = Influence.withoutSite(smooth(4), smooth(4).sites().get(PLANTED));
    SurfaceReport.FittedVariogram without = fitted(rest, List.of()).report().variogram();
    double sill = without.partialSill() + without.microScale();
    assertThat(one.sillWithout() / sill).isCloseTo(1, within(0.1));
    assertThat(one.sill()).isGreaterThan(1.5 * one.sillWithout());
    assertThat(hanging(surface)).hasSize(1);
    assertThat(hanging(surface).get(0).where()).isEqualTo("site s00017");
  }

  @Test
  void withoutAnOutlierNothingIsNamed() {
    assertThat(fitted(smooth(0), List.of()).report().details().influential()).isEmpty();
    assertThat(hanging(fitted(smooth(0), List.of()))).isEmpty();
  }

  private static double wave(double x, double y) {
    return Math.sin(x / 120) * Math.cos(y / 90);
  }

  /** A survey explains nearly all of it: residuals are small, and so must those of the refit be. */
  private static Surface steered(double off) {
    Random random = new Random(8);
    List<SurveyReading> survey = new ArrayList<>();
    for (int i = 0; i < 2500; i++) {
      double x = 20 * (i % 50);
      double y = 20 * (i / 50);
      survey.add(new SurveyReading(new PlaceM(x, y), Math.exp(3 + 0.5 * wave(x, y))));
    }
    double[] x = random.doubles(110, 0, 1000).toArray();
    double[] y = random.doubles(110, 0, 1000).toArray();
    double[] z = new double[110];
    for (int i = 0; i < 110; i++) {
      z[i] = 1 + 1.2 * wave(x[i], y[i]) + 0.2 * random.nextGaussian();
    }
    z[PLANTED] += off;
    return fitted(SurfaceCases.exact(Scale.NATURAL, x, y, z), survey);
  }

  @Test
  void withADriftTheRefitHasTheDriftToo() {
    Surface mild = steered(0.75);
    assertThat(mild.report().chosen()).isEqualTo(SurfaceMethod.DRIFT);
    assertThat(mild.report().details().sites())
        .anyMatch(s -> s.siteId().equals("s00017") && s.standardisedError() > 3);
    assertThat(hanging(mild)).isEmpty();

    Surface gross = steered(4);
    assertThat(gross.report().chosen()).isEqualTo(SurfaceMethod.DRIFT);
    assertThat(hanging(gross)).hasSize(1);
    SurfaceDetails.Influence one = gross.report().details().influential().get(0);
    assertThat(one.siteId()).isEqualTo("s00017");
    assertThat(one.sillWithout()).isCloseTo(0.04, within(0.015));
  }
}
