package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import fieldsalt.geo.PlaceM;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Zones by salinity and sodicity. The truth is known: salt rises from south to north, ECe 1 to 12
 * dS/m; the eastern half of field {@code delta} is sodic (SAR 28 against 6 in the west, limit 13);
 * nothing is known of sodium in field {@code brink}.
 */
class SodicZonesTest {
  private static final double WIDE = 800;
  private static final double HIGH = 500;
  private static final GeometryFactory JTS = new GeometryFactory();

  @TempDir static Path temp;
  private static Path folder;
  private static Run run;

  @BeforeAll
  static void mapOnce() throws IOException {
    folder = temp.resolve("both/out");
    run = map(temp.resolve("both"), true, "zones.sodicity=yes");
  }

  private static Run map(Path at, boolean salty, String... sets) throws IOException {
    return map(ranch(at, salty, "sar"), sets);
  }

  private static Run map(TestRanch ranch, String... sets) throws IOException {
    List<Object> words = new ArrayList<>(List.of("--quiet"));
    for (String set : sets) {
      words.addAll(List.of("--set", set));
    }
    return ranch.map(words.toArray());
  }

  private static double trueEce(double y) {
    return Math.exp(Math.log(12) * y / HIGH);
  }

  private static boolean isSodic(double x) {
    return x >= WIDE / 2;
  }

  /** 60 sites a field on a shifted lattice, readings off by about 7 %. */
  private static TestRanch ranch(Path at, boolean salty, String sodium) {
    Random random = new Random(salty ? 7 : 12);
    TestRanch ranch =
        new TestRanch(at, "depth,method,ec,unit," + sodium)
            .field("delta", 0, WIDE, HIGH)
            .field("brink", 1000, WIDE, HIGH);
    for (int i = 0; i < 120; i++) {
      double x = 40 + i % 10 * 80 + 40 * (random.nextDouble() - 0.5);
      double y = 40 + i / 10 % 6 * 84 + 40 * (random.nextDouble() - 0.5);
      boolean delta = i < 60;
      double ece = salty ? trueEce(y) * noise(random, 0.07) : 3 * noise(random, 0.4);
      double sar = delta ? (isSodic(x) ? 28 : 6) * noise(random, 0.07) : 20;
      boolean known = delta || (sodium.equals("esp_pct") && (i == 79 || i == 99));
      ranch.sample(
          (delta ? 0 : 1000) + x,
          y,
          "0-30 cm,paste,%.3f,dS/m,%s",
          ece,
          known ? String.format(Locale.ROOT, "%.2f", sar) : "");
    }
    return ranch;
  }

  private static double noise(Random random, double sd) {
    return Math.exp(sd * random.nextGaussian());
  }

  private static List<JsonNode> zones(Path dir) throws IOException {
    List<JsonNode> zones = new ArrayList<>();
    new ObjectMapper()
        .readTree(dir.resolve("zones.geojson").toFile())
        .path("features")
        .forEach(zones::add);
    return zones;
  }

  private static List<JsonNode> of(String field, Path dir) throws IOException {
    return zones(dir).stream()
        .filter(z -> z.path("properties").path("field").asText().equals(field))
        .toList();
  }

  /** In metres from the south-west corner of field delta. */
  private static Geometry shape(JsonNode zone) {
    JsonNode geometry = zone.path("geometry");
    boolean multi = geometry.path("type").asText().equals("MultiPolygon");
    List<Polygon> parts = new ArrayList<>();
    for (JsonNode part :
        multi ? geometry.path("coordinates") : List.of(geometry.path("coordinates"))) {
      parts.add(polygon(part));
    }
    return JTS.createMultiPolygon(parts.toArray(Polygon[]::new));
  }

  private static Polygon polygon(JsonNode rings) {
    List<Coordinate[]> all = new ArrayList<>();
    for (JsonNode ring : rings) {
      List<Coordinate> points = new ArrayList<>();
      for (JsonNode p : ring) {
        PlaceM m = TestRanch.UTM.toMetres(p.get(0).asDouble(), p.get(1).asDouble());
        points.add(new Coordinate(m.xM() - TestRanch.WEST, m.yM() - TestRanch.SOUTH));
      }
      all.add(points.toArray(Coordinate[]::new));
    }
    return JTS.createPolygon(
        JTS.createLinearRing(all.get(0)),
        all.subList(1, all.size()).stream()
            .map(JTS::createLinearRing)
            .toArray(org.locationtech.jts.geom.LinearRing[]::new));
  }

  /** Share of field delta whose zone says of sodium what is true there. */
  private static double rightShare(List<JsonNode> zones) {
    int all = 0;
    int right = 0;
    for (JsonNode zone : zones) {
      IndexedPointInAreaLocator in = new IndexedPointInAreaLocator(shape(zone));
      boolean says = zone.path("properties").path("sodicity").asText().equals("sodic");
      for (double x = 5; x < WIDE; x += 10) {
        for (double y = 5; y < HIGH; y += 10) {
          if (in.locate(new Coordinate(x, y)) == Location.INTERIOR) {
            all++;
            right += says == isSodic(x) ? 1 : 0;
          }
        }
      }
    }
    assertThat(all).isGreaterThan(3900);
    return (double) right / all;
  }

  @Test
  void zonesAreCombinationsThatFollowTheTruthInBoth() throws IOException {
    assertThat(run.code()).as(run.err()).isZero();
    List<JsonNode> delta = of("delta", folder);
    assertThat(rightShare(delta)).isGreaterThan(0.93);
    double sodic =
        delta.stream()
            .map(z -> z.path("properties"))
            .filter(p -> p.path("sodicity").asText().equals("sodic"))
            .mapToDouble(p -> p.path("area_ha").asDouble())
            .sum();
    assertThat(sodic).isCloseTo(20, within(1.5)); // half of 40 ha
    List<String> classes = new ArrayList<>();
    for (JsonNode zone : delta) {
      JsonNode p = zone.path("properties");
      assertThat(p.path("class").asText())
          .isEqualTo(p.path("salinity").asText() + ", " + p.path("sodicity").asText());
      classes.add(p.path("class").asText());
    }
    // NRCS classes without a crop: ECe 1 to 12 crosses 2, 4 and 8 dS/m in either half
    assertThat(classes)
        .hasSize(8)
        .doesNotHaveDuplicates()
        .filteredOn(c -> c.endsWith(", sodic"))
        .hasSize(4);
    assertThat(run.out()).contains("not sodic").contains(", sodic");
  }

  @Test
  void eachZoneTellsItsSodiumWithItsErrorAndTheChance() throws IOException {
    for (JsonNode zone : of("delta", folder)) {
      JsonNode p = zone.path("properties");
      boolean sodic = p.path("sodicity").asText().equals("sodic");
      assertThat(p.path("sodic_by").asText()).isEqualTo("SAR");
      double mean = p.path("sodic_mean").asDouble();
      assertThat(mean).isCloseTo(sodic ? 28 : 6, within(sodic ? 5.0 : 2.5));
      assertThat(p.path("sodic_low").asDouble()).isLessThan(mean);
      assertThat(p.path("sodic_high").asDouble()).isGreaterThan(mean);
      double chance = p.path("p_sodic").asDouble();
      assertThat(chance).isBetween(sodic ? 0.75 : 0.0, sodic ? 1.0 : 0.25);
    }
  }

  @Test
  void withoutSodiumZonesFollowSalinityOnlyAndItIsSaid() throws IOException {
    List<JsonNode> brink = of("brink", folder);
    assertThat(brink).hasSize(4);
    for (JsonNode zone : brink) {
      JsonNode p = zone.path("properties");
      assertThat(p.path("class").asText()).isEqualTo(p.path("salinity").asText());
      assertThat(p.path("sodicity").isNull()).isTrue();
      assertThat(p.path("p_sodic").isNull()).isTrue();
    }
    JsonNode findings = record(folder).path("findings");
    List<JsonNode> unknown = new ArrayList<>();
    findings.forEach(
        f -> {
          if (f.path("code").asText().equals("sodicity-unknown")) {
            unknown.add(f);
          }
        });
    assertThat(unknown).hasSize(1);
    assertThat(unknown.get(0).path("where").asText()).isEqualTo("field brink");
    assertThat(unknown.get(0).path("done").asText()).contains("salinity only");
  }

  private static JsonNode record(Path dir) throws IOException {
    return new ObjectMapper().readTree(dir.resolve("run.json").toFile());
  }

  @Test
  void everyFileTellsBoth() throws IOException {
    JsonNode zoning = record(folder).path("zoning");
    assertThat(zoning.get(0).path("sodicity").path("property").asText()).isEqualTo("SAR");
    assertThat(zoning.get(0).path("sodicity").path("limit").asDouble()).isEqualTo(13);
    assertThat(zoning.get(0).path("sodicity").path("sites").asInt()).isEqualTo(60);
    assertThat(zoning.get(1).path("sodicity").isNull()).isTrue();
    assertThat(record(folder).path("zones").get(0).path("sodicity").path("property").asText())
        .isEqualTo("SAR");
    String page = Files.readString(folder.resolve("report.html"));
    assertThat(page)
        .contains("url(#sodic)")
        .contains("dotted: sodic, SAR of 13 and above in the top 15")
        .contains("zones by salinity only, sodium unknown (field brink)")
        .contains("not sodic: SAR ");
    String style = Files.readString(folder.resolve("zones.sld"));
    assertThat(style).contains("<WellKnownName>circle</WellKnownName>");
    assertThat(style.split("<GraphicFill>", -1)).hasSize(5); // the four sodic classes
    String table =
        Files.readString(folder.resolve("zones.dbf"), java.nio.charset.StandardCharsets.ISO_8859_1);
    assertThat(table.substring(0, 2000))
        .contains("salinity")
        .contains("sodicity")
        .contains("sodic_by")
        .contains("p_sodic");
    assertThat(run.err()).isEmpty();
  }

  @Test
  void zonesTileTheField() throws IOException {
    List<Geometry> shapes = of("delta", folder).stream().map(SodicZonesTest::shape).toList();
    double sum = shapes.stream().mapToDouble(Geometry::getArea).sum();
    double field =
        polygon(
                new ObjectMapper()
                    .readTree(TestRanch.feature("delta", 0, WIDE, HIGH))
                    .path("geometry")
                    .path("coordinates"))
            .getArea();
    assertThat(sum).isCloseTo(field, within(1e-5 * field));
    assertThat(OverlayNGRobust.union(shapes).getArea()).isCloseTo(sum, within(1e-5 * sum));
  }

  /** Salt without a pattern, sodium with one: zones follow sodium where the map of salt is flat. */
  @Test
  void sodiumDividesAFieldWhoseSaltSaysNothing() throws IOException {
    Path at = temp.resolve("flat");
    Path out = at.resolve("out");
    Run flat = map(at, false, "zones.sodicity=yes");
    assertThat(flat.code()).as(flat.err()).isZero();
    assertThat(record(out).path("surface").path("method").asText()).isEqualTo("mean");
    List<JsonNode> delta = of("delta", out);
    assertThat(delta).hasSize(2);
    assertThat(rightShare(delta)).isGreaterThan(0.93);
    assertThat(of("brink", out)).hasSize(1);
    assertThat(Files.readString(out.resolve("report.html")))
        .doesNotContain("Treat each field alike")
        .doesNotContain("do not vary rates by place")
        .contains("do not vary leaching by place")
        .contains("vary gypsum by them, not leaching") // delta
        .contains("treat the field alike") // brink
        .contains("SAR at 60 sites, drawn by kriging");
  }

  @Test
  void withoutTheKeyNothingChanges() throws IOException {
    Path at = temp.resolve("plain");
    Path out = at.resolve("out");
    assertThat(map(at, true).code()).isZero();
    assertThat(of("delta", out)).hasSize(4);
    assertThat(of("delta", out).get(0).path("properties").has("sodicity")).isFalse();
    assertThat(Files.readString(out.resolve("zones.sld"))).doesNotContain("GraphicFill");
  }

  /**
   * An ESP limit of 6, as some countries have it, is SAR 5.18 (Handbook 60): all of it is sodic.
   */
  @Test
  void theLimitIsTheUsers() throws IOException {
    Path at = temp.resolve("six");
    Path out = at.resolve("out");
    Run run = map(at, true, "zones.sodicity=yes", "zones.sodic-esp=6");
    assertThat(run.code()).as(run.err()).isZero();
    double limit = record(out).path("zoning").get(0).path("sodicity").path("limit").asDouble();
    assertThat(limit).isCloseTo(5.18, within(0.005));
    assertThat(of("delta", out))
        .extracting(z -> z.path("properties").path("sodicity").asText())
        .containsOnly("sodic");
  }

  /**
   * The same numbers as ESP in percent: the limit is 15. Two sites of the other field do not do.
   */
  @Test
  void espIsTakenWhereItIsWhatWasMeasured() throws IOException {
    Path at = temp.resolve("esp");
    Path out = at.resolve("out");
    Run run = map(ranch(at, true, "esp_pct"), "zones.sodicity=yes");
    assertThat(run.code()).as(run.err()).isZero();
    JsonNode by = record(out).path("zoning").get(0).path("sodicity");
    assertThat(by.path("property").asText()).isEqualTo("ESP");
    assertThat(by.path("limit").asDouble()).isEqualTo(15);
    assertThat(rightShare(of("delta", out))).isGreaterThan(0.9);
    assertThat(of("delta", out).get(0).path("properties").path("sodic_by").asText())
        .isEqualTo("ESP");
    assertThat(record(out).path("findings").toString())
        .contains("\"code\":\"sodicity-unknown\",\"where\":\"field brink\",\"found\":\"2 sites");
    assertThat(of("brink", out)).hasSize(4);
  }

  /** Zone of a place: its number in the list. */
  private static int zoneAt(List<JsonNode> zones, JsonNode place) {
    PlaceM m = TestRanch.UTM.toMetres(place.get(0).asDouble(), place.get(1).asDouble());
    Coordinate at = new Coordinate(m.xM() - TestRanch.WEST, m.yM() - TestRanch.SOUTH);
    for (int z = 0; z < zones.size(); z++) {
      if (new IndexedPointInAreaLocator(shape(zones.get(z))).locate(at) != Location.EXTERIOR) {
        return z;
      }
    }
    return -1;
  }

  /** Worked out again from the files alone, each mean without the site itself. */
  @Test
  void sharesAtTheSitesAreThoseOfTheFiles() throws IOException {
    JsonNode sites = new ObjectMapper().readTree(folder.resolve("samples.geojson").toFile());
    List<JsonNode> zones = of("brink", folder);
    List<double[]> known = new ArrayList<>(); // zone, ln ECe
    for (JsonNode site : sites.path("features")) {
      if (site.path("properties").path("field").asText().equals("brink")) {
        double ece = site.path("properties").path("ece_dS_m").asDouble();
        int zone = zoneAt(zones, site.path("geometry").path("coordinates"));
        known.add(new double[] {zone, Math.log(ece)});
      }
    }
    double byZone = 0;
    double byField = 0;
    for (double[] site : known) {
      byZone += Math.pow(site[1] - meanOfOthers(known, site, true), 2);
      byField += Math.pow(site[1] - meanOfOthers(known, site, false), 2);
    }
    JsonNode zoning = record(folder).path("zoning").get(1);
    assertThat(zoning.path("field").asText()).isEqualTo("brink");
    assertThat(zoning.path("sites").asInt()).isEqualTo(known.size()).isEqualTo(60);
    double share = zoning.path("variance_share_at_sites").asDouble();
    assertThat(share).isCloseTo(1 - byZone / byField, within(1e-3)).isGreaterThan(0.7);
    // one laboratory, one method: its shared error is in every site alike; 0.07 is each one's own
    double mean = known.stream().mapToDouble(k -> k[1]).average().orElseThrow();
    double variance = known.stream().mapToDouble(k -> Math.pow(k[1] - mean, 2)).sum() / 59;
    assertThat(zoning.path("error_share_at_sites").asDouble())
        .isCloseTo(0.07 * 0.07 / variance, within(1e-3));
    assertThat(zoning.path("variance_share_on_map").asDouble()).isBetween(0.8, 1.0);
    assertThat(Files.readString(folder.resolve("report.html")))
        .contains("How good the zones are")
        .contains(Math.round(100 * share) + "\u00a0%, 60 sites");
  }

  private static double meanOfOthers(List<double[]> known, double[] site, boolean sameZone) {
    return known.stream()
        .filter(k -> k != site && (!sameZone || k[0] == site[0]))
        .mapToDouble(k -> k[1])
        .average()
        .orElseThrow();
  }
}
