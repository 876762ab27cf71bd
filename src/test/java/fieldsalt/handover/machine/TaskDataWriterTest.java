package fieldsalt.handover.machine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.geo.Projections;
import fieldsalt.geo.RanchProjection;
import fieldsalt.handover.Handover;
import fieldsalt.handover.HandoverResult;
import fieldsalt.handover.Isoxml;
import fieldsalt.handover.SmallRanch;
import fieldsalt.handover.input.HandoverInput;
import fieldsalt.handover.input.MachineJob;
import fieldsalt.handover.table.Degrees;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;

public class TaskDataWriterTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();
  @TempDir Path dir;

  private static HandoverInput version(HandoverInput input, int version) {
    MachineJob job = input.machine().orElseThrow();
    return SmallRanch.with(
        input,
        new MachineJob(
            job.ranch(),
            job.product(),
            job.swathM(),
            version,
            job.rateMgPerHaByZone(),
            job.passesByZone(),
            job.drafts()));
  }

  private Path zip() {
    return dir.resolve("TASKDATA.zip");
  }

  /**
   * The standard's file names are upper case; the reader looks for {@code .bin}, takes {@code .BIN}
   * and remarks on it.
   */
  private static List<String> unexpected(JsonNode warnings) {
    List<String> unexpected = new ArrayList<>();
    for (JsonNode warning : warnings) {
      if (!warning.asText().matches("Letter case of filename GRD\\d+.bin doesn't match .*")) {
        unexpected.add(warning.asText());
      }
    }
    return unexpected;
  }

  /** Raw rate that the file gives a position, by the standard's rules for grids. */
  public static int rateAt(JsonNode task, double longitude, double latitude) {
    JsonNode grid = task.path("grid");
    int column =
        (int)
            Math.floor(
                (longitude - grid.path("GridMinimumEastPosition").asDouble())
                    / grid.path("GridCellEastSize").asDouble());
    int row =
        (int)
            Math.floor(
                (latitude - grid.path("GridMinimumNorthPosition").asDouble())
                    / grid.path("GridCellNorthSize").asDouble());
    int columns = grid.path("GridMaximumColumn").asInt();
    byte[] cells = Base64.getDecoder().decode(task.path("cells").asText());
    int at = row * columns + column;
    if (column < 0 || column >= columns || row < 0 || row >= grid.path("GridMaximumRow").asInt()) {
      return task.path("zones").path(task.path("outside").asText()).path("value").asInt();
    }
    return grid.path("GridType").asInt() == 2
        ? ByteBuffer.wrap(cells).order(ByteOrder.LITTLE_ENDIAN).getInt(4 * at)
        : task.path("zones").path(String.valueOf(cells[at] & 0xFF)).path("value").asInt(-1);
  }

  /** Random places of a field that are at least a cell's diagonal away from a zone's boundary. */
  private static List<Point> places(HandoverInput input, String field, int count, double margin) {
    List<Geometry> zones =
        input.zones().stream()
            .filter(z -> z.zone().field().equals(field))
            .map(z -> z.zone().shapeM())
            .toList();
    Envelope box = new Envelope();
    zones.forEach(z -> box.expandToInclude(z.getEnvelopeInternal()));
    Random random = new Random(7);
    List<Point> places = new ArrayList<>();
    while (places.size() < count) {
      Point at =
          FACTORY.createPoint(
              new Coordinate(
                  box.getMinX() + random.nextDouble() * box.getWidth(),
                  box.getMinY() + random.nextDouble() * box.getHeight()));
      if (zones.stream().allMatch(z -> z.getBoundary().distance(at) > margin)) {
        places.add(at);
      }
    }
    return places;
  }

  private static double planned(HandoverInput input, String field, Point at) {
    return input.zones().stream()
        .filter(z -> z.zone().field().equals(field) && z.zone().shapeM().contains(at))
        .mapToDouble(z -> input.machine().orElseThrow().rateMgPerHa(z.zone().name()))
        .sum();
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 4})
  void anIndependentReaderFindsTheSameFieldsGridsAndRates(int version) throws IOException {
    Isoxml.require();
    HandoverInput input = version(SmallRanch.of("North", "Ñandú 2"), version);
    Handover.write(dir, input);
    JsonNode read = Isoxml.read(zip());
    assertThat(unexpected(read.path("warnings"))).isEmpty();
    assertThat(read.path("version").asInt()).isEqualTo(version);
    assertThat(read.path("partfields")).hasSize(2);
    assertThat(read.path("tasks")).hasSize(2);
    for (int f = 0; f < 2; f++) {
      String field = input.fields().get(f).name();
      JsonNode partfield = read.path("partfields").get(f);
      assertThat(partfield.path("name").asText()).isEqualTo(field);
      assertThat(partfield.path("area").asDouble())
          .isCloseTo(input.fields().get(f).shapeM().getArea(), within(0.5));
      JsonNode task = read.path("tasks").get(f);
      assertThat(task.path("partfield").asText()).isEqualTo(field);
      assertThat(task.path("customer").asText()).isEqualTo("Sample & Sons");
      assertThat(task.path("farm").asText()).isEqualTo("Sample & Sons");
      assertThat(task.path("status").asInt()).as("planned").isEqualTo(1);
      for (Point at : places(input, field, 50, 4.5)) {
        double[] lonLat = SmallRanch.UTM.toLonLat(at.getX(), at.getY());
        assertThat(rateAt(task, lonLat[0], lonLat[1]) / 100_000.0)
            .as(field + " " + at)
            .isCloseTo(planned(input, field, at), within(1e-9));
      }
    }
  }

  /** The boundary is the same as in zones.geojson: to the 7th decimal of a degree. */
  @ParameterizedTest
  @ValueSource(ints = {3, 4})
  void theBoundaryHasItsPartsAndHoles(int version) throws IOException {
    Isoxml.require();
    HandoverInput input = version(SmallRanch.of("North", "South"), version);
    Handover.write(dir, input);
    JsonNode north = Isoxml.read(zip()).path("partfields").get(0);
    assertThat(north.path("polygons").asInt()).isEqualTo(version == 4 ? 2 : 1);
    JsonNode shape = north.path("shape").path("coordinates");
    assertThat(shape).hasSize(2);
    int rings = shape.get(0).size() + shape.get(1).size();
    assertThat(rings).as("two shells and what is left of the hole").isEqualTo(3);
    Geometry degrees = new Degrees(SmallRanch.UTM).of(input.fields().get(0).shapeM());
    List<String> wanted = new ArrayList<>();
    for (Coordinate at : degrees.getCoordinates()) {
      wanted.add(at.x + " " + at.y);
    }
    for (JsonNode part : shape) {
      for (JsonNode ring : part) {
        for (JsonNode at : ring) {
          assertThat(wanted).contains(at.get(0).asDouble() + " " + at.get(1).asDouble());
        }
      }
    }
  }

  @Test
  void nothingIsSpreadOutsideOrWhereThePositionIsLost() throws IOException {
    Isoxml.require();
    Handover.write(dir, SmallRanch.of("North", "South"));
    for (JsonNode task : Isoxml.read(zip()).path("tasks")) {
      assertThat(task.path("lost").isInt()).isTrue();
      assertThat(task.path("outside").isInt()).isTrue();
      for (String code : List.of("lost", "outside")) {
        JsonNode zone = task.path("zones").path(task.path(code).asText());
        assertThat(zone.path("value").asInt(-1)).isZero();
      }
      task.path("zones")
          .forEach(
              zone -> {
                assertThat(zone.path("ddi").asText()).isEqualTo("0006");
                assertThat(zone.path("product").asText()).isEqualTo("Gypsum 92 %");
              });
      double[] yard = SmallRanch.UTM.toLonLat(SmallRanch.X + 175, SmallRanch.Y + 175);
      assertThat(rateAt(task, yard[0], yard[1])).as("the hole of North").isZero();
    }
  }

  /** With more than 254 rates the grid holds the rates themselves (grid type 2). */
  @Test
  void moreRatesThanCodesMakeAGridOfValues() throws IOException {
    Isoxml.require();
    Map<String, Envelope> zones = new LinkedHashMap<>();
    Map<String, Double> rates = new LinkedHashMap<>();
    for (int i = 0; i < 300; i++) {
      double x = i % 20 * 30;
      double y = i / 20 * 30;
      zones.put("z" + i, new Envelope(x, x + 30, y, y + 30));
      rates.put("z" + i, 1 + i / 1000.0);
    }
    HandoverInput input =
        SmallRanch.oneField("many", zones, MachineJob.inOnePass("", "lime", 12, 4, rates));
    Handover.write(dir, input);
    JsonNode read = Isoxml.read(zip());
    assertThat(unexpected(read.path("warnings"))).isEmpty();
    JsonNode task = read.path("tasks").get(0);
    assertThat(task.path("grid").path("GridType").asInt()).isEqualTo(2);
    for (Point at : places(input, "many", 50, 4.5)) {
      double[] lonLat = SmallRanch.UTM.toLonLat(at.getX(), at.getY());
      assertThat(rateAt(task, lonLat[0], lonLat[1]) / 100_000.0)
          .isCloseTo(planned(input, "many", at), within(1e-9));
    }
  }

  /** Cells are not smaller than half a swath, and the sum of rate x area is the plan's to 0.5 %. */
  @ParameterizedTest
  @ValueSource(doubles = {6, 12, 24, 36})
  void cellsAreHalfASwathAndTonnesAreThePlans(double swathM) {
    for (long seed = 1; seed <= 20; seed++) {
      Random random = new Random(seed);
      List<Geometry> zones = new ArrayList<>();
      List<Integer> raws = new ArrayList<>();
      Geometry rest = blob(random, 0, 0, 140 + 60 * random.nextDouble());
      for (int z = 0; z < 4; z++) {
        Geometry patch =
            blob(random, random.nextGaussian() * 60, random.nextGaussian() * 60, 50)
                .intersection(rest);
        if (patch.getArea() > 4000 && patch.getDimension() == 2 && onlyPolygons(patch)) {
          rest = rest.difference(patch);
          zones.add(patch);
          raws.add(100_000 * (1 + random.nextInt(10)));
        }
      }
      zones.add(rest);
      raws.add(random.nextBoolean() ? 0 : 150_000);
      if (raws.stream().allMatch(r -> r == 0)) {
        continue;
      }
      TaskGrid grid = new TaskGridder(SmallRanch.UTM, zones, raws, swathM / 2).grid();
      double plan = 0;
      for (int z = 0; z < zones.size(); z++) {
        plan += raws.get(z) / 100_000.0 * zones.get(z).getArea() / 10_000;
      }
      assertThat(grid.planTonnes()).isCloseTo(plan, within(1e-6));
      assertThat(spread(grid)).as("seed " + seed).isCloseTo(plan, within(0.005 * plan));
      assertThat(grid.tonnes()).isCloseTo(spread(grid), within(2e-4 * plan));
      assertCells(grid, swathM / 2);
    }
  }

  private static boolean onlyPolygons(Geometry shape) {
    for (int i = 0; i < shape.getNumGeometries(); i++) {
      if (shape.getGeometryN(i).getDimension() < 2) {
        return false;
      }
    }
    return true;
  }

  private static Geometry blob(Random random, double x, double y, double radius) {
    Coordinate[] ring = new Coordinate[25];
    for (int i = 0; i < 24; i++) {
      double r = radius * (0.7 + 0.3 * random.nextDouble());
      double angle = 2 * Math.PI * i / 24;
      ring[i] =
          new Coordinate(
              SmallRanch.X + x + r * Math.cos(angle), SmallRanch.Y + y + r * Math.sin(angle));
    }
    ring[24] = ring[0];
    return FACTORY.createPolygon(ring);
  }

  /** Tonnes by the cells' own corners on the ground. */
  private static double spread(TaskGrid grid) {
    double tonnes = 0;
    for (int row = 0; row < grid.rows(); row++) {
      Geometry cell = cell(grid, grid.columns() / 2, row);
      for (int column = 0; column < grid.columns(); column++) {
        int rate = Math.max(0, grid.rates()[row * grid.columns() + column]);
        tonnes += rate / 100_000.0 * cell.getArea() / 10_000;
      }
    }
    return tonnes;
  }

  private static Geometry cell(TaskGrid grid, int column, int row) {
    double west = grid.minEast() + column * grid.cellEast();
    double south = grid.minNorth() + row * grid.cellNorth();
    return SmallRanch.UTM.toMetres(
        FACTORY.toGeometry(
            new Envelope(west, west + grid.cellEast(), south, south + grid.cellNorth())));
  }

  private static void assertCells(TaskGrid grid, double leastM) {
    for (int row : new int[] {0, grid.rows() - 1}) {
      Coordinate[] corners = cell(grid, 0, row).getCoordinates();
      for (int i = 0; i < 4; i++) {
        assertThat(corners[i].distance(corners[i + 1])).isBetween(leastM * 0.99999, leastM * 1.005);
      }
    }
  }

  /** A field far from the equator, in the south, at the edge of its zone. */
  @Test
  void cellsHoldTheirSizeInTheSouth() {
    RanchProjection south = Projections.utmFor(-68.9, -54.5);
    double x = south.toMetres(-68.9, -54.5).xM();
    double y = south.toMetres(-68.9, -54.5).yM();
    Geometry field = FACTORY.toGeometry(new Envelope(x, x + 900, y, y + 700));
    TaskGrid grid = new TaskGridder(south, List.of(field), List.of(300_000), 6).grid();
    assertThat(grid.error()).isLessThan(0.005);
    double corner = grid.minNorth() + grid.rows() * grid.cellNorth();
    double metres =
        south
            .toMetres(grid.minEast(), grid.minNorth())
            .distanceM(south.toMetres(grid.minEast() + grid.cellEast(), grid.minNorth()));
    assertThat(metres).isBetween(5.999, 6.01);
    assertThat(corner).isGreaterThan(-54.5);
  }

  @Test
  void aFieldTooSmallForTheSwathIsSaid() throws IOException {
    HandoverInput input =
        SmallRanch.oneField(
            "tiny",
            Map.of("t-1", new Envelope(0, 13, 0, 11)),
            MachineJob.inOnePass("r", "gypsum", 36, 4, Map.of("t-1", 5.0)));
    List<Finding> findings = Handover.write(dir, input).findings();
    assertThat(findings).extracting(f -> f.code().id()).contains("machine-tonnes");
    assertThat(findings.get(0).found()).contains("the plan 0.1 t");
  }

  @Test
  void whereNothingIsSpreadTheFileHoldsTheFields() throws IOException {
    Isoxml.require();
    HandoverInput input = SmallRanch.of("North", "South");
    HandoverInput none =
        SmallRanch.with(input, MachineJob.inOnePass("r", "gypsum", 12, 4, Map.of()));
    assertThat(Handover.write(dir, none).findings()).isEmpty();
    JsonNode read = Isoxml.read(zip());
    assertThat(read.path("partfields")).hasSize(2);
    assertThat(read.path("tasks")).isEmpty();
  }

  /** A second pass holds only the zones that need one, or the others would get their rate twice. */
  @Test
  void aSecondPassIsATaskOfItsOwn() throws IOException {
    Isoxml.require();
    HandoverInput input = SmallRanch.of("North", "South");
    MachineJob once = input.machine().orElseThrow();
    Map<String, Integer> passes = Map.of("North-2", 2, "North-3", 1, "South-2", 1);
    MachineJob twice =
        new MachineJob(
            once.ranch(), once.product(), 12, 4, once.rateMgPerHaByZone(), passes, Set.of());
    Handover.write(dir, SmallRanch.with(input, twice));
    JsonNode tasks = Isoxml.read(zip()).path("tasks");
    assertThat(tasks).hasSize(3);
    JsonNode second = tasks.get(1);
    assertThat(second.path("name").asText()).isEqualTo("pass 2 North");
    assertThat(second.path("partfield").asText()).isEqualTo("North");
    double[] in2 = SmallRanch.UTM.toLonLat(SmallRanch.X + 450, SmallRanch.Y + 200);
    double[] in3 = SmallRanch.UTM.toLonLat(SmallRanch.X + 125, SmallRanch.Y + 125);
    assertThat(rateAt(tasks.get(0), in2[0], in2[1])).isEqualTo(500_000);
    assertThat(rateAt(tasks.get(0), in3[0], in3[1])).isEqualTo(250_000);
    assertThat(rateAt(second, in2[0], in2[1])).isEqualTo(500_000);
    assertThat(rateAt(second, in3[0], in3[1])).isZero();
  }

  @Test
  void namesAreCutToWhatATerminalShowsAndEscaped() throws IOException {
    String emoji = "\uD83C\uDF3E".repeat(40);
    HandoverInput input = SmallRanch.of(emoji, "<a & \"b\">\u0001");
    List<Finding> findings = Handover.write(dir, input).findings();
    assertThat(findings)
        .filteredOn(f -> f.where().startsWith("TASKDATA.zip"))
        .extracting(Finding::where)
        .containsExactly("TASKDATA.zip, name of the field");
    String text = text("TASKDATA/TASKDATA.XML");
    assertThat(text)
        .contains("C=\"" + "\uD83C\uDF3E".repeat(32) + "\"")
        .contains("C=\"&lt;a &amp; &quot;b&quot;&gt;\"");
  }

  /** Two fields that begin alike are still two on the terminal. */
  @Test
  void namesThatAreCutStayApart() throws IOException {
    String same = "n".repeat(40);
    Handover.write(dir, SmallRanch.of(same + " east", same + " west"));
    assertThat(text("TASKDATA/TASKDATA.XML"))
        .contains("<PFD A=\"PFD1\" C=\"" + "n".repeat(32) + "\"")
        .contains("<PFD A=\"PFD2\" C=\"" + "n".repeat(30) + "~2\"");
  }

  private String text(String entry) throws IOException {
    try (ZipFile zip = new ZipFile(zip().toFile())) {
      return new String(
          zip.getInputStream(zip.getEntry(entry)).readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void filesHaveTheStandardsNames() throws IOException {
    Handover.write(dir, SmallRanch.of("North", "South"));
    try (ZipFile zip = new ZipFile(zip().toFile())) {
      assertThat(zip.stream().map(ZipEntry::getName).toList())
          .containsExactly(
              "TASKDATA/TASKDATA.XML", "TASKDATA/GRD00001.BIN", "TASKDATA/GRD00002.BIN");
      ZipEntry grid = zip.getEntry("TASKDATA/GRD00001.BIN");
      assertThat(text("TASKDATA/TASKDATA.XML")).contains("H=\"" + grid.getSize() + "\"");
    }
  }

  @Test
  void aLocalRanchHasNoMachineFileAndSaysWhy() throws IOException {
    HandoverResult result =
        Handover.write(dir, SmallRanch.of(Projections.local(), "North", "South"));
    assertThat(zip()).doesNotExist();
    assertThat(result.findings())
        .extracting(f -> f.code().id())
        .containsExactly("local-coordinates");
  }

  /** ISO 11783-11: DDI 6 in mg/m²; 1 kg/ha is 100 mg/m². */
  @Test
  void massPerAreaIsInMilligramsPerSquareMetre() {
    assertThat(ProcessData.MASS_PER_AREA.ddi()).isEqualTo("0006");
    assertThat(ProcessData.MASS_PER_AREA.raw(5_000)).isEqualTo(500_000);
  }

  /** ISO 11783-11: DDI 1 in steps of 0.01 mm³/m²; 1 L/ha is 100 mm³/m². */
  @Test
  void volumePerAreaIsInHundredthsOfACubicMillimetre() {
    assertThat(ProcessData.VOLUME_PER_AREA.ddi()).isEqualTo("0001");
    assertThat(ProcessData.VOLUME_PER_AREA.raw(200)).isEqualTo(2_000_000);
  }

  /** 1 mm of water is 10,000 L/ha; DDI 1 ends at 21.47 mm (2147483647 x 0.01 mm³/m²). */
  @Test
  void aLeachingDepthDoesNotFitAVolumePerArea() {
    assertThat(ProcessData.VOLUME_PER_AREA.raw(214_748)).isPositive();
    assertThatThrownBy(() -> ProcessData.VOLUME_PER_AREA.raw(250_000))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("at most 214748 L/ha");
    assertThatThrownBy(() -> ProcessData.MASS_PER_AREA.raw(-1)).isInstanceOf(InputProblem.class);
  }

  @Test
  void onlyTheTwoEditionsExist() {
    assertThatThrownBy(() -> MachineJob.inOnePass("r", "p", 12, 5, Map.of()))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
