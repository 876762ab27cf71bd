package fieldsalt.surface;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.choice.SurfaceSettings;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.map.PointDistribution;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** 5,000 sites of two laboratories that are far apart, on two fields, with a few by paste. */
class DenseSurveyTest {
  private static final int SITES = 5000;
  private static final double[] OFFSETS = {0.4, -0.3};
  private static final double SIZE_M = 1000;

  private static double truth(double x, double y) {
    return 1 + 0.8 * Math.sin(x / 150) * Math.cos(y / 120);
  }

  private static SiteReadings readings() {
    Random random = new Random(12);
    List<SiteReadings.Site> sites = new ArrayList<>();
    List<SiteReadings.Row> rows = new ArrayList<>();
    for (int i = 0; i < SITES; i++) {
      int field = i % 2;
      double x = SIZE_M * random.nextDouble() + 1200 * field;
      double y = SIZE_M * random.nextDouble();
      sites.add(SurfaceCases.site(String.format("s%04d", i), "field " + field, x, y));
      int laboratory = i % 3 == 0 ? 1 : 0;
      double cheap = truth(x, y) + OFFSETS[laboratory] + 0.2 * random.nextGaussian();
      rows.add(SurfaceCases.cheap(i, cheap, 0.04, laboratory));
      if (i % 100 < 2) {
        rows.add(SurfaceCases.paste(i, truth(x, y) + 0.05 * random.nextGaussian(), 0.0025));
      }
    }
    return SurfaceCases.readings(Scale.LOG, sites, rows, 0.16, 0.16);
  }

  @Test
  void theirOffsetsAreFoundAndTheMapFollowsTheTruth() {
    List<FieldBoundary> fields =
        List.of(
            SurfaceCases.rectangle("field 0", 0, 0, SIZE_M, SIZE_M),
            SurfaceCases.rectangle("field 1", 1200, 0, 1200 + SIZE_M, SIZE_M));
    Surface surface = SurfaceFitter.fit(readings(), fields, SurfaceSettings.defaults());
    assertThat(surface.report().chosen()).isEqualTo(SurfaceMethod.KRIGING);
    assertThat(surface.report().findings()).extracting(f -> f.code().id()).contains("many-sites");
    double bias = 0;
    double square = 0;
    int held = 0;
    int count = 0;
    for (int i = 0; i < 100; i++) {
      int field = i % 2;
      double x = 50 + 1200 * field + 90 * (i / 2 % 10);
      double y = 50 + 200 * (i / 20);
      PointDistribution known = surface.at(new Target("field " + field, new PlaceM(x, y)));
      double error = Math.log(known.median()) - truth(x, y);
      bias += error / 100;
      square += error * error / 100;
      double value = Math.exp(truth(x, y));
      held += value > known.quantile(0.05) && value < known.quantile(0.95) ? 1 : 0;
      count++;
    }
    assertThat(count).isEqualTo(100);
    assertThat(Math.abs(bias)).isLessThan(0.05);
    assertThat(Math.sqrt(square)).isLessThan(0.12);
    assertThat(held).isGreaterThan(80);
  }
}
