package fieldsalt.surface.covariance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.site.Scale;
import fieldsalt.surface.SurfaceCases;
import fieldsalt.surface.fit.MomentsFit;
import fieldsalt.surface.fit.RangeBounds;
import fieldsalt.surface.fit.SampleVariogram;
import fieldsalt.surface.fit.SurfaceDetails;
import fieldsalt.surface.site.Observations;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Sample variograms of ln zinc of the Meuse samples and weighted fits, by R 4.2.2 with gstat 2.1-0:
 * 15 lags to a third of the bounding box's diagonal, weights pairs / distance² (fit.method 7).
 */
class VariogramReferenceTest {
  private static List<SurfaceDetails.Lag> lags() {
    Map<String, double[]> meuse = SurfaceCases.table("meuse.csv");
    double[] z = SurfaceCases.logs(meuse.get("zinc"));
    return SampleVariogram.of(
        Observations.of(
            SurfaceCases.exact(Scale.LOG, meuse.get("x"), meuse.get("y"), z), List.of()));
  }

  @Test
  void matheronAndCressieHawkins() {
    Map<String, double[]> matheron = SurfaceCases.table("meuse-variogram-matheron.csv");
    Map<String, double[]> robust = SurfaceCases.table("meuse-variogram-cressie-hawkins.csv");
    List<SurfaceDetails.Lag> lags = lags();
    assertThat(lags).hasSize(15);
    for (int k = 0; k < 15; k++) {
      assertThat((double) lags.get(k).pairs()).isEqualTo(matheron.get("np")[k]);
      assertThat(lags.get(k).distanceM()).isCloseTo(matheron.get("dist_m")[k], within(1e-9));
      assertThat(lags.get(k).matheron()).isCloseTo(matheron.get("gamma")[k], within(1e-9));
      assertThat(lags.get(k).cressieHawkins()).isCloseTo(robust.get("gamma")[k], within(1e-9));
    }
  }

  private static void fits(Variogram shape, int row) {
    Map<String, double[]> expected = SurfaceCases.table("meuse-variogram-fits.csv");
    MomentsFit.Fit fit = new MomentsFit(lags()).fit(shape, new RangeBounds(20, 9000, 100));
    double nugget = expected.get("nugget")[row];
    assertThat(fit.model().microScale()).isCloseTo(nugget, within(0.01 * nugget + 1e-12));
    assertThat(fit.model().partialSill() / expected.get("partial_sill")[row])
        .isCloseTo(1, within(0.01));
    assertThat(fit.model().correlation().rangeM() / expected.get("range_parameter_m")[row])
        .isCloseTo(1, within(0.01));
    assertThat(fit.squares() / expected.get("weighted_sse")[row]).isCloseTo(1, within(0.01));
  }

  @Test
  void weightedFits() {
    fits(new Spherical(1), 0);
    fits(new Exponential(1), 1);
  }

  /** Known errors are taken off pair by pair, those of a shared offset only where it differs. */
  @Test
  void knownErrorsAreTakenOff() {
    var sites = List.of(SurfaceCases.site("a", "one", 0, 0), SurfaceCases.site("b", "one", 100, 0));
    var rows = List.of(SurfaceCases.cheap(0, 1, 0.1, 0), SurfaceCases.paste(1, 3, 0.2));
    var far = SurfaceCases.site("c", "one", 600, 0);
    var readings =
        SurfaceCases.readings(
            Scale.LOG,
            List.of(sites.get(0), sites.get(1), far),
            List.of(rows.get(0), rows.get(1), SurfaceCases.paste(2, 3, 0.2)),
            0.5);
    SurfaceDetails.Lag first = SampleVariogram.of(Observations.of(readings, List.of())).get(0);
    assertThat(first.pairs()).isEqualTo(1);
    assertThat(first.matheron()).isCloseTo((4 - 0.1 - 0.2 - 0.5) / 2, within(1e-12));
  }
}
