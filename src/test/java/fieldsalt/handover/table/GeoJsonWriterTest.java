package fieldsalt.handover.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import fieldsalt.finding.InputProblem;
import fieldsalt.geo.Projections;
import fieldsalt.geo.RanchProjection;
import fieldsalt.handover.Handover;
import fieldsalt.handover.SmallRanch;
import fieldsalt.handover.folder.WrittenFile;
import fieldsalt.handover.input.HandoverInput;
import fieldsalt.handover.input.SurfaceLabels;
import fieldsalt.handover.input.ZoneFeature;
import fieldsalt.zones.field.Zone;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** The rules of RFC 7946, section by section. */
class GeoJsonWriterTest {
  @TempDir Path dir;

  private JsonNode written(HandoverInput input, String name) throws IOException {
    Handover.write(dir, input);
    return new ObjectMapper().readTree(dir.resolve(name).toFile());
  }

  private static Coordinate[] ring(JsonNode ring) {
    List<Coordinate> at = new ArrayList<>();
    ring.forEach(p -> at.add(new Coordinate(p.get(0).asDouble(), p.get(1).asDouble())));
    return at.toArray(new Coordinate[0]);
  }

  @Test
  void zonesCarryTheContractsProperties() throws IOException {
    JsonNode zones = written(SmallRanch.of("North", "Ñandú 2"), "zones.geojson");
    assertThat(zones.path("type").asText()).isEqualTo("FeatureCollection");
    assertThat(zones.has("crs")).as("RFC 7946 section 4: no crs member").isFalse();
    assertThat(zones.path("features")).hasSize(5);
    JsonNode first = zones.path("features").get(0).path("properties");
    List<String> names = new ArrayList<>();
    first.fieldNames().forEachRemaining(names::add);
    assertThat(names)
        .startsWith("field", "zone", "class", "area_ha", "ece_dS_m", "ece_low", "ece_high")
        .contains("p_above", "yield_pct");
    assertThat(first.path("area_ha").asDouble()).isCloseTo(11.5, within(1e-4));
    assertThat(zones.path("features").get(3).path("properties").path("field").asText())
        .isEqualTo("Ñandú 2");
    assertThat(zones.path("features").get(1).path("properties").path("yield_pct").isNull())
        .isTrue();
  }

  @Test
  void ringsFollowTheRightHandRuleAndSevenDecimals() throws IOException {
    String raw;
    JsonNode zones = written(SmallRanch.of("North", "South"), "zones.geojson");
    raw = Files.readString(dir.resolve("zones.geojson"));
    JsonNode multi = zones.path("features").get(0).path("geometry");
    assertThat(multi.path("type").asText()).isEqualTo("MultiPolygon");
    JsonNode parts = multi.path("coordinates");
    assertThat(parts).hasSize(2);
    assertThat(Orientation.isCCW(ring(parts.get(0).get(0)))).as("shell").isTrue();
    assertThat(Orientation.isCCW(ring(parts.get(0).get(1)))).as("hole").isFalse();
    assertThat(raw).doesNotContainPattern("\\[-?[0-9.]*\\.[0-9]{8}").doesNotContain("E-");
    double onEarth = Area.ofRing(ring(parts.get(1).get(0)));
    assertThat(onEarth * 111_320 * 110_900 * Math.cos(Math.toRadians(32.9)))
        .as("the small part is 0.5 ha")
        .isCloseTo(5000, within(50.0));
  }

  @Test
  void theBoxHoldsEveryVertex() throws IOException {
    JsonNode zones = written(SmallRanch.of("North", "South"), "zones.geojson");
    JsonNode box = zones.path("bbox");
    assertThat(box).hasSize(4);
    double[] se = SmallRanch.UTM.toLonLat(SmallRanch.X + 1000, SmallRanch.Y);
    assertThat(box.get(2).asDouble()).isCloseTo(se[0], within(2e-6));
    assertThat(box.get(0).asDouble()).isLessThan(box.get(2).asDouble());
    assertThat(box.get(1).asDouble()).isLessThan(box.get(3).asDouble());
  }

  @Test
  void samplesArePoints() throws IOException {
    JsonNode samples = written(SmallRanch.of("North", "South"), "samples.geojson");
    JsonNode first = samples.path("features").get(0);
    assertThat(first.path("geometry").path("type").asText()).isEqualTo("Point");
    assertThat(first.path("properties").path("id").asText()).isEqualTo("S-North");
    assertThat(first.path("properties").path("relation").asText())
        .isEqualTo("1:5, \"medium\" & loam");
  }

  @Test
  void aShapeAcrossThe180thMeridianIsRefused() {
    RanchProjection fiji = Projections.utmFor(179.999, -17);
    double x = fiji.toMetres(179.999, -17).xM();
    double y = fiji.toMetres(179.999, -17).yM();
    Geometry across =
        new GeometryFactory()
            .toGeometry(new org.locationtech.jts.geom.Envelope(x, x + 900, y, y + 900));
    Zone zone = new Zone("a-1", "a", 0, "low", across);
    HandoverInput input =
        new HandoverInput(
            fiji,
            List.of(SmallRanch.field("a", across)),
            List.of(new ZoneFeature(zone, Map.of(), 1)),
            List.of(),
            List.of(),
            List.of(),
            SurfaceLabels.ece("4 dS/m"),
            Optional.empty());
    assertThatThrownBy(() -> Handover.write(dir, input))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("180th meridian");
  }

  @Test
  void aLocalSystemSaysThatItsNumbersAreMetres() throws IOException {
    HandoverInput local = SmallRanch.of(Projections.local(), "North", "South");
    JsonNode zones = written(local, "zones.geojson");
    assertThat(zones.path("coordinates_are").asText()).contains("metres");
    assertThat(zones.path("bbox").get(2).asDouble()).isEqualTo(SmallRanch.X + 1000);
  }

  @Test
  void sameInputSameBytes() throws IOException {
    Path again = Files.createDirectory(dir.resolve("again"));
    Path once = Files.createDirectory(dir.resolve("once"));
    List<WrittenFile> files = Handover.write(once, SmallRanch.of("North", "Ñandú 2")).files();
    Handover.write(again, SmallRanch.of("North", "Ñandú 2"));
    assertThat(files).isNotEmpty();
    for (WrittenFile file : files) {
      assertThat(Files.mismatch(once.resolve(file.name()), again.resolve(file.name())))
          .as(file.name())
          .isEqualTo(-1);
    }
  }
}
