package fieldsalt.handover;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import fieldsalt.geo.Projections;
import fieldsalt.geo.RanchProjection;
import fieldsalt.handover.machine.TaskDataWriterTest;
import fieldsalt.pipeline.MapRun;
import fieldsalt.read.job.JobDocument;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.coverage.CoverageValidator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;

/** What the whole job writes for the invented sample ranch, as other programs see it. */
class SampleFilesTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final RanchProjection UTM = Projections.utmFor(-153, 30);

  @TempDir static Path dir;

  private record ZoneOnFile(JsonNode properties, Geometry degrees) {}

  private static Map<String, List<ZoneOnFile>> zones;
  private static Map<String, Geometry> fields;

  @BeforeAll
  static void mapOnce() throws IOException {
    JobDocument job =
        JobDocument.read(Path.of("sample-fields/ranch/job.yaml"), List.of("cell-m=10"));
    MapRun run = MapRun.prepare(job, dir, false, (stage, share) -> {});
    run.compute();
    run.write("test", Optional.empty());
    zones = new LinkedHashMap<>();
    for (JsonNode feature : JSON.readTree(dir.resolve("zones.geojson").toFile()).path("features")) {
      zones
          .computeIfAbsent(
              feature.path("properties").path("field").asText(), f -> new ArrayList<>())
          .add(new ZoneOnFile(feature.path("properties"), shape(feature.path("geometry"))));
    }
    fields = new LinkedHashMap<>();
    JsonNode given = JSON.readTree(Path.of("sample-fields/ranch/fields.geojson").toFile());
    for (JsonNode feature : given.path("features")) {
      JsonNode names = feature.path("properties");
      String name = names.path(names.has("field") ? "field" : "name").asText();
      fields.put(name, shape(feature.path("geometry")));
    }
  }

  private static Geometry shape(JsonNode geometry) {
    List<Polygon> parts = new ArrayList<>();
    if (geometry.path("type").asText().equals("Polygon")) {
      parts.add(polygon(geometry.path("coordinates")));
    } else {
      geometry.path("coordinates").forEach(part -> parts.add(polygon(part)));
    }
    return parts.size() == 1
        ? parts.get(0)
        : FACTORY.createMultiPolygon(parts.toArray(new Polygon[0]));
  }

  private static Polygon polygon(JsonNode rings) {
    List<Coordinate[]> all = new ArrayList<>();
    for (JsonNode ring : rings) {
      List<Coordinate> at = new ArrayList<>();
      ring.forEach(p -> at.add(new Coordinate(p.get(0).asDouble(), p.get(1).asDouble())));
      all.add(at.toArray(new Coordinate[0]));
    }
    return FACTORY.createPolygon(
        FACTORY.createLinearRing(all.get(0)),
        all.stream()
            .skip(1)
            .map(FACTORY::createLinearRing)
            .toArray(org.locationtech.jts.geom.LinearRing[]::new));
  }

  @Test
  void gdalReadsEveryFileWithoutAWord() {
    Gdal.require("ogrinfo", "gdalinfo", "ogr2ogr");
    for (String name : dir.toFile().list()) {
      if (name.endsWith(".tif")) {
        assertThat(Gdal.run(dir, "gdalinfo", "-stats", name))
            .contains("STATISTICS_VALID_PERCENT", "NoData Value=-9999", "ID[\"EPSG\",32605]");
      } else if (name.matches(".*\\.(shp|gpkg|geojson)")) {
        assertThat(Gdal.run(dir, "ogrinfo", "-so", "-al", name))
            .doesNotContainIgnoringCase("warning");
        Gdal.run(dir, "ogr2ogr", "-f", "GPKG", name + ".round.gpkg", name);
        String round = Gdal.run(dir, "ogrinfo", "-q", name + ".round.gpkg");
        assertThat(round.lines().count()).isEqualTo(name.endsWith(".gpkg") ? 3 : 1);
      }
    }
  }

  @Test
  void theZonesOnFileTileTheFieldsTheUserGave() {
    assertThat(zones.keySet()).containsExactlyInAnyOrderElementsOf(fields.keySet());
    zones.forEach(
        (field, tiles) -> {
          Geometry[] shapes = tiles.stream().map(ZoneOnFile::degrees).toArray(Geometry[]::new);
          assertThat(CoverageValidator.isValid(shapes)).as(field).isTrue();
          double sum = 0;
          for (Geometry shape : shapes) {
            sum += shape.getArea();
          }
          double whole = fields.get(field).getArea();
          assertThat(sum).as(field).isCloseTo(whole, within(1e-5 * whole));
        });
  }

  @Test
  void areasAreThoseOfTheShapes() {
    zones
        .values()
        .forEach(
            tiles ->
                tiles.forEach(
                    zone ->
                        assertThat(zone.properties().path("area_ha").asDouble())
                            .isCloseTo(
                                UTM.toMetres(zone.degrees()).getArea() / 1e4, within(2e-3))));
  }

  /** 50 random positions of each field with a task, a cell away from any boundary. */
  @Test
  void theMachineFileHasTheRatesOfTheZones() throws IOException {
    Isoxml.require();
    JsonNode read = Isoxml.read(dir.resolve("TASKDATA.zip"));
    assertThat(read.path("partfields")).hasSize(fields.size());
    int tasks = 0;
    for (JsonNode task : read.path("tasks")) {
      if (!task.path("name").asText().startsWith("pass ")) {
        tasks++;
        String field = task.path("partfield").asText();
        for (Point at : places(field)) {
          double[] lonLat = UTM.toLonLat(at.getX(), at.getY());
          assertThat(TaskDataWriterTest.rateAt(task, lonLat[0], lonLat[1]) / 100_000.0)
              .as(field + " " + at)
              .isCloseTo(rate(field, lonLat), within(1e-9));
        }
      }
    }
    assertThat(tasks).isPositive();
  }

  private static double rate(String field, double[] lonLat) {
    Point at = FACTORY.createPoint(new Coordinate(lonLat[0], lonLat[1]));
    return zones.get(field).stream()
        .filter(zone -> zone.degrees().contains(at))
        .mapToDouble(zone -> zone.properties().path("rate_t_ha").asDouble())
        .sum();
  }

  private static List<Point> places(String field) {
    List<Geometry> shapes =
        zones.get(field).stream().map(zone -> UTM.toMetres(zone.degrees())).toList();
    Envelope box = new Envelope();
    shapes.forEach(shape -> box.expandToInclude(shape.getEnvelopeInternal()));
    Random random = new Random(11);
    List<Point> places = new ArrayList<>();
    while (places.size() < 50) {
      double x = box.getMinX() + random.nextDouble() * box.getWidth();
      double y = box.getMinY() + random.nextDouble() * box.getHeight();
      Point at = FACTORY.createPoint(new Coordinate(x, y));
      if (shapes.stream().allMatch(shape -> shape.getBoundary().distance(at) > 4.5)) {
        places.add(at);
      }
    }
    return places;
  }

  /** Over all passes the grids spread what zones.geojson says is needed. */
  @Test
  void theMachineFileSpreadsThePlansTonnes() throws IOException {
    Isoxml.require();
    double plan = 0;
    for (List<ZoneOnFile> tiles : zones.values()) {
      for (ZoneOnFile zone : tiles) {
        plan +=
            zone.properties().path("gypsum_t_ha").asDouble()
                * zone.properties().path("area_ha").asDouble();
      }
    }
    double spread = 0;
    for (JsonNode task : Isoxml.read(dir.resolve("TASKDATA.zip")).path("tasks")) {
      spread += spread(task);
    }
    assertThat(plan).isPositive();
    assertThat(spread).isCloseTo(plan, within(0.005 * plan));
  }

  private static double spread(JsonNode task) {
    JsonNode grid = task.path("grid");
    double south = grid.path("GridMinimumNorthPosition").asDouble();
    double west = grid.path("GridMinimumEastPosition").asDouble();
    Geometry cell =
        UTM.toMetres(
            FACTORY.toGeometry(
                new Envelope(
                    west,
                    west + grid.path("GridCellEastSize").asDouble(),
                    south,
                    south + grid.path("GridCellNorthSize").asDouble())));
    double tonnes = 0;
    for (byte code : Base64.getDecoder().decode(task.path("cells").asText())) {
      double rate = task.path("zones").path(String.valueOf(code & 0xFF)).path("value").asInt();
      tonnes += rate / 100_000 * cell.getArea() / 10_000;
    }
    return tonnes;
  }
}
