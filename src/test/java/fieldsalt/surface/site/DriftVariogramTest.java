package fieldsalt.surface.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.geo.PlaceM;
import fieldsalt.surface.SurfaceCases;
import fieldsalt.surface.fit.Modelled;
import fieldsalt.surface.fit.SampleVariogram;
import fieldsalt.surface.fit.SurfaceDetails;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** With drifts the sample variogram, and so the fit above 500 sites, is that of the residuals. */
class DriftVariogramTest {
  private static final double SLOPE = 3;

  private record Wave(String name, double lengthM) implements Drift {
    @Override
    public double at(PlaceM place) {
      return Math.sin(place.xM() / lengthM) + Math.cos(place.yM() / lengthM);
    }
  }

  private static final Drift LONG = new Wave("long", 300);
  private static final Drift SHORT = new Wave("short", 130);

  /** Two fields with other means; each value the drifts' effects and what is given on top. */
  private static SiteReadings steered(double[] onTop) {
    Random random = new Random(4);
    List<SiteReadings.Site> sites = new ArrayList<>();
    List<SiteReadings.Row> rows = new ArrayList<>();
    for (int i = 0; i < onTop.length; i++) {
      boolean east = i % 2 == 0;
      double x = 1000 * random.nextDouble() + (east ? 2000 : 0);
      SiteReadings.Site site =
          SurfaceCases.site(
              String.format("s%04d", i), east ? "east" : "west", x, 1000 * random.nextDouble());
      sites.add(site);
      double drift = SLOPE * LONG.at(site.place()) - SHORT.at(site.place());
      rows.add(SurfaceCases.paste(i, (east ? 5 : 1) + drift + onTop[i], 0));
    }
    return SurfaceCases.readings(Scale.NATURAL, sites, rows);
  }

  @Test
  void whatDriftsExplainIsNotInTheSampleVariogram() {
    Observations data = Observations.of(steered(new double[60]), List.of(LONG, SHORT));
    List<SurfaceDetails.Lag> lags = SampleVariogram.of(data);
    assertThat(lags).hasSizeGreaterThan(10);
    for (SurfaceDetails.Lag lag : lags) {
      assertThat(lag.matheron()).isCloseTo(0, within(1e-20));
    }
    Observations without = Observations.of(steered(new double[60]), List.of());
    assertThat(SampleVariogram.of(without).get(10).matheron()).isGreaterThan(1);
  }

  /** White noise of variance 0.5: three standard errors of a variance of 700 are 0.08. */
  @Test
  void above500SitesTheSillIsThatOfTheResiduals() {
    Random random = new Random(9);
    double[] noise = random.doubles(700).map(fieldsalt.gaussian.Normal::quantile).toArray();
    double[] scaled = java.util.Arrays.stream(noise).map(e -> Math.sqrt(0.5) * e).toArray();
    SiteReadings readings = steered(scaled);
    Modelled with = Modelled.of(Observations.of(readings, List.of(LONG, SHORT)));
    assertThat(with.fit().model().pointVariance()).isCloseTo(0.5, within(0.08));
    Modelled without = Modelled.of(Observations.of(readings, List.of()));
    assertThat(without.fit().model().pointVariance()).isGreaterThan(2);
  }
}
