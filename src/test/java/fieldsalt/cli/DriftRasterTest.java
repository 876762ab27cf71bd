package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import fieldsalt.geo.PlaceM;
import fieldsalt.geo.Projections;
import fieldsalt.geo.RanchProjection;
import fieldsalt.geo.RasterFile;
import fieldsalt.handover.raster.TestRasters;
import fieldsalt.surface.site.Grid;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A user's own raster steers the map where it predicts unseen sites better, and only there: three
 * invented fields side by side near a border of UTM zones, a raster of waves, and readings that
 * follow it or do not.
 */
class DriftRasterTest {
  /** Zone 11, half a degree west of the border with zone 12. */
  private static final RanchProjection HERE = Projections.utmFor(-114.5, 33);

  private static final PlaceM ORIGIN = HERE.toMetres(-114.5, 33);
  private static final double WIDE = 600;
  private static final double HIGH = 700;
  @TempDir Path temp;

  private static double wave(double x, double y) {
    return Math.sin((x - ORIGIN.xM()) / 95) * Math.cos((y - ORIGIN.yM()) / 80);
  }

  /** A raster of 10 m over the whole ranch and 100 m around it. */
  private static Grid around() {
    return new Grid(ORIGIN.xM() - 100, ORIGIN.yM() + HIGH + 100, 10, 220, 90);
  }

  private static String degrees(double x, double y) {
    double[] lonLat = HERE.toLonLat(ORIGIN.xM() + x, ORIGIN.yM() + y);
    return String.format(Locale.ROOT, "%.8f,%.8f", lonLat[0], lonLat[1]);
  }

  /**
   * Three fields with so many sites each and a slope of ln ECe on the wave in each.
   *
   * @param widest share of a field's width, from the west, in which it is sampled
   */
  private void ranch(double[] slopes, int[] sites, double widest) throws IOException {
    List<String> fields = new ArrayList<>();
    StringBuilder rows = new StringBuilder("id,lon,lat,method,ec,unit\n");
    Random random = new Random(6);
    for (int f = 0; f < 3; f++) {
      double west = 650 * f;
      String ring =
          String.join(
              "],[",
              degrees(west, 0),
              degrees(west + WIDE, 0),
              degrees(west + WIDE, HIGH),
              degrees(west, HIGH),
              degrees(west, 0));
      fields.add(
          "{\"type\":\"Feature\",\"properties\":{\"field\":\"F"
              + f
              + "\"},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[[["
              + ring
              + "]]]}}");
      for (int i = 0; i < sites[f]; i++) {
        double x = west + 10 + (widest * WIDE - 20) * random.nextDouble();
        double y = 10 + (HIGH - 20) * random.nextDouble();
        double z =
            1.2 + slopes[f] * wave(ORIGIN.xM() + x, ORIGIN.yM() + y) + 0.15 * random.nextGaussian();
        rows.append("F%d-%02d,%s,paste,%.3f,dS/m%n".formatted(f, i, degrees(x, y), Math.exp(z)));
      }
    }
    Files.writeString(
        temp.resolve("fields.geojson"),
        "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", fields) + "]}");
    Files.writeString(temp.resolve("samples.csv"), rows);
    Files.writeString(
        temp.resolve("job.yaml"),
        """
        fields: fields.geojson
        samples: samples.csv
        cell-m: 12
        drift: [wet.tif]
        """);
  }

  private static final int[] EVEN = {25, 25, 25};

  private Run map() {
    return Run.of("map", temp.resolve("job.yaml"), "-o", temp.resolve("out"));
  }

  private JsonNode done() throws IOException {
    Run run = map();
    assertThat(run.code()).as(run.err()).isZero();
    return new ObjectMapper().readTree(temp.resolve("out/run.json").toFile());
  }

  private String page() throws IOException {
    return Files.readString(temp.resolve("out/report.html"));
  }

  private static List<String> found(JsonNode run, String code) {
    List<String> found = new ArrayList<>();
    for (JsonNode f : run.path("findings")) {
      if (f.path("code").asText().equals(code)) {
        found.add(f.path("where").asText() + ": " + f.path("found").asText());
      }
    }
    return found;
  }

  private static String method(JsonNode run) {
    return run.path("surface").path("method").asText();
  }

  @Test
  void aRasterThatHelpsIsUsed() throws IOException {
    ranch(new double[] {0.9, 0.8, 1.0}, EVEN, 1);
    TestRasters.write(temp.resolve("wet.tif"), around(), HERE, DriftRasterTest::wave);
    JsonNode run = done();
    assertThat(method(run)).isEqualTo("drift");
    assertThat(page()).contains("The effect of wet.tif keeps its sign");
  }

  @Test
  void aRasterThatDoesNotHelpIsNotUsed() throws IOException {
    ranch(new double[] {0, 0, 0}, EVEN, 1);
    TestRasters.write(temp.resolve("wet.tif"), around(), HERE, DriftRasterTest::wave);
    JsonNode run = done();
    assertThat(method(run)).isNotEqualTo("drift");
    assertThat(temp.resolve("out/extrapolated.tif")).doesNotExist();
  }

  /** The large field pulls the effect up, the others say the opposite. */
  @Test
  void aRasterWhoseEffectChangesItsSignIsNotUsed() throws IOException {
    ranch(new double[] {1.2, -0.25, -0.25}, new int[] {28, 9, 9}, 1);
    TestRasters.write(temp.resolve("wet.tif"), around(), HERE, DriftRasterTest::wave);
    JsonNode run = done();
    assertThat(method(run)).isNotEqualTo("drift");
    assertThat(page()).contains("The effect of wet.tif changes its sign when a field is left out");
    double drift = crps(run, "drift");
    assertThat(drift).as("it would have been the best").isLessThan(crps(run, "kriging"));
  }

  private static double crps(JsonNode run, String method) {
    for (JsonNode candidate : run.path("surface").path("leave_one_out")) {
      if (candidate.path("method").asText().equals(method)) {
        return candidate.path("crps").asDouble();
      }
    }
    throw new AssertionError(method + " was not tried");
  }

  /** The same raster in the neighbouring zone of UTM gives the same choice and figures. */
  @Test
  void aRasterInAnotherSystem() throws IOException {
    ranch(new double[] {0.9, 0.8, 1.0}, EVEN, 1);
    RanchProjection other = Projections.utmFor(-113.5, 33);
    assertThat(other.epsg()).isNotEqualTo(HERE.epsg());
    PlaceM corner = other.toMetres(-114.5, 33);
    Grid grid = new Grid(corner.xM() - 400, corner.yM() + 1100, 5, 600, 320);
    TestRasters.write(
        temp.resolve("wet.tif"),
        grid,
        other,
        (x, y) -> {
          double[] lonLat = other.toLonLat(x, y);
          PlaceM here = HERE.toMetres(lonLat[0], lonLat[1]);
          return wave(here.xM(), here.yM());
        });
    RasterFile raster = RasterFile.open(temp.resolve("wet.tif"), HERE);
    PlaceM place = new PlaceM(ORIGIN.xM() + 333, ORIGIN.yM() + 222);
    assertThat(raster.at(place)).isCloseTo(wave(place.xM(), place.yM()), within(2e-3));
    assertThat(method(done())).isEqualTo("drift");
  }

  /** Higher than anywhere sampled in the east, and without a value in the far east of F2. */
  private static double rising(double x, double y) {
    double east = (x - ORIGIN.xM()) % 650;
    if (x - ORIGIN.xM() > 1300 + 550) {
      return Double.NaN;
    }
    return wave(x, y) + (east > 420 ? 4 : 0);
  }

  @Test
  void cellsBeyondWhatWasSampledAreFoundHatchedAndMarked() throws IOException {
    ranch(new double[] {0.9, 0.8, 1.0}, EVEN, 0.65);
    TestRasters.write(temp.resolve("wet.tif"), around(), HERE, DriftRasterTest::rising);
    JsonNode run = done();
    assertThat(method(run)).isEqualTo("drift");
    assertThat(found(run, "drift-extrapolated"))
        .anySatisfy(
            f -> assertThat(f).matches("field F0: about (2[5-9]|3[0-5]) % of it has values of .*"))
        .anySatisfy(
            f ->
                assertThat(f)
                    .matches("field F2: about ([5-9]|1[0-2]) % of it has no value of wet.tif"));
    assertThat(page()).contains("fill=\"url(#beyond)\"", "hatched the other way");
    RasterFile marked = RasterFile.open(temp.resolve("out/extrapolated.tif"), HERE);
    assertThat(marked.at(new PlaceM(ORIGIN.xM() + 200, ORIGIN.yM() + 300))).isZero();
    assertThat(marked.at(new PlaceM(ORIGIN.xM() + 520, ORIGIN.yM() + 300))).isEqualTo(1);
    assertThat(marked.at(new PlaceM(ORIGIN.xM() + 1300 + 575, ORIGIN.yM() + 300))).isEqualTo(1);
    // where the raster has no value the error has the drift's own variation in it
    RasterFile error = RasterFile.open(temp.resolve("out/ece-error.tif"), HERE);
    double known = error.at(new PlaceM(ORIGIN.xM() + 1300 + 330, ORIGIN.yM() + 300));
    double unknown = error.at(new PlaceM(ORIGIN.xM() + 1300 + 575, ORIGIN.yM() + 300));
    assertThat(unknown).isGreaterThan(1.5 * known);
  }

  /** Without a value on half of F2; one site of F1 lies where it has none. */
  private static double oneHalf(double x, double y) {
    double east = x - ORIGIN.xM();
    boolean hole = east > 650 && east < 690 && y - ORIGIN.yM() < 200;
    return hole || east > 1300 + 300 ? Double.NaN : wave(x, y);
  }

  /**
   * Which fields are steered, by how much it helps, and why the third is not, stand on the page.
   */
  @Test
  void aRasterSteersTheFieldsThatItCovers() throws IOException {
    ranch(new double[] {0.9, 0.8, 0}, EVEN, 1);
    TestRasters.write(temp.resolve("wet.tif"), around(), HERE, DriftRasterTest::oneHalf);
    JsonNode run = done();
    JsonNode steered = run.path("surface").path("steered");
    assertThat(steered.path("fields").toString()).isEqualTo("[\"F0\",\"F1\"]");
    assertThat(steered.path("by").toString()).isEqualTo("[\"wet.tif\"]");
    double with = steered.path("explained").asDouble();
    double without = steered.path("explained_without").asDouble();
    assertThat(with).isGreaterThan(0.8).isGreaterThan(without + 0.1);
    assertThat(method(run)).isNotEqualTo("drift");
    assertThat(found(run, "drift-not-used"))
        .singleElement()
        .satisfies(
            f -> assertThat(f).matches("field F2: wet.tif: it has no value at \\d+ of 25 sites"));
    assertThat(page())
        .contains("wet.tif steers the map of 2 fields (F0, F1)")
        .containsPattern(" explains " + Math.round(100 * with) + "\\W%");
    RasterFile map = RasterFile.open(temp.resolve("out/ece.tif"), HERE);
    double[] ratios = new double[3];
    for (int f = 0; f < 3; f++) {
      ratios[f] = spread(map, 650 * f);
    }
    assertThat(ratios[0]).isGreaterThan(1.2);
    assertThat(ratios[1]).isGreaterThan(1.2);
    assertThat(ratios[2]).isLessThan(0.5);
  }

  /** Difference of ln between high and low of the wave in one field. */
  private static double spread(RasterFile map, double west) {
    double high = Double.NEGATIVE_INFINITY;
    double low = Double.POSITIVE_INFINITY;
    for (double x = 30; x < 270; x += 12) {
      for (double y = 230; y < 670; y += 12) {
        double z = Math.log(map.at(new PlaceM(ORIGIN.xM() + west + x, ORIGIN.yM() + y)));
        high = Math.max(high, z);
        low = Math.min(low, z);
      }
    }
    return high - low;
  }

  @Test
  void threeRastersAreRefused() throws IOException {
    ranch(new double[] {0, 0, 0}, EVEN, 1);
    String job = Files.readString(temp.resolve("job.yaml"));
    Files.writeString(
        temp.resolve("job.yaml"), job.replace("[wet.tif]", "[wet.tif, dry.tif, high.tif]"));
    Run run = map();
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err()).contains("drift", "at most two");
    assertThat(temp.resolve("out")).doesNotExist();
  }
}
