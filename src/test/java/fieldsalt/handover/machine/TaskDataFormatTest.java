package fieldsalt.handover.machine;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.handover.SmallRanch;
import fieldsalt.handover.input.HandoverInput;
import fieldsalt.handover.input.MachineJob;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.zip.ZipFile;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Envelope;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/** Elements, attributes and grid bytes of ISO 11783-10 task data, one by one, without a reader. */
class TaskDataFormatTest {
  @TempDir Path dir;

  private Document written(HandoverInput input) throws IOException {
    TaskDataWriter.write(zip(), input, input.machine().orElseThrow());
    try (ZipFile zip = new ZipFile(zip().toFile());
        InputStream in = zip.getInputStream(zip.getEntry("TASKDATA/TASKDATA.XML"))) {
      return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(in);
    } catch (ParserConfigurationException | SAXException e) {
      throw new AssertionError("not well formed", e);
    }
  }

  private Path zip() {
    return dir.resolve("TASKDATA.zip");
  }

  private byte[] cells(Element grid) throws IOException {
    try (ZipFile zip = new ZipFile(zip().toFile())) {
      String name = "TASKDATA/" + grid.getAttribute("G") + ".BIN";
      return zip.getInputStream(zip.getEntry(name)).readAllBytes();
    }
  }

  private static HandoverInput ranch(int version) {
    HandoverInput input = SmallRanch.of("North", "South");
    MachineJob job = input.machine().orElseThrow();
    return SmallRanch.with(
        input,
        MachineJob.inOnePass(job.ranch(), job.product(), 12, version, job.rateMgPerHaByZone()));
  }

  private static List<Element> elements(Node within, String tag) {
    NodeList all =
        within instanceof Document document
            ? document.getElementsByTagName(tag)
            : ((Element) within).getElementsByTagName(tag);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < all.getLength(); i++) {
      elements.add((Element) all.item(i));
    }
    return elements;
  }

  /** 3.3 and 4.3 are the two editions' schemas; 1 is farm software. */
  @ParameterizedTest
  @ValueSource(ints = {3, 4})
  void theRootNamesEditionAndOrigin(int version) throws IOException {
    Element root = written(ranch(version)).getDocumentElement();
    assertThat(root.getTagName()).isEqualTo("ISO11783_TaskData");
    assertThat(root.getAttribute("VersionMajor")).isEqualTo(String.valueOf(version));
    assertThat(root.getAttribute("VersionMinor")).isEqualTo("3");
    assertThat(root.getAttribute("DataTransferOrigin")).isEqualTo("1");
    assertThat(root.getAttribute("ManagementSoftwareManufacturer")).isNotBlank();
  }

  /** Ids made by farm software are positive, unique, and every reference finds its element. */
  @ParameterizedTest
  @ValueSource(ints = {3, 4})
  void idsAndReferences(int version) throws IOException {
    Document task = written(ranch(version));
    Set<String> ids = new TreeSet<>();
    for (String tag : List.of("CTR", "FRM", "PFD", "PDT", "TSK")) {
      for (Element element : elements(task, tag)) {
        assertThat(element.getAttribute("A")).matches(tag + "[1-9]\\d*");
        assertThat(ids.add(element.getAttribute("A"))).isTrue();
        assertThat(element.getAttribute(tag.equals("PFD") ? "C" : "B")).isNotBlank();
      }
    }
    assertThat(elements(task, "FRM").get(0).getAttribute("I")).isIn(ids);
    for (Element field : elements(task, "PFD")) {
      assertThat(List.of(field.getAttribute("E"), field.getAttribute("F")))
          .isSubsetOf(ids)
          .containsExactly("CTR1", "FRM1");
    }
    for (Element job : elements(task, "TSK")) {
      assertThat(List.of(job.getAttribute("C"), job.getAttribute("D"), job.getAttribute("E")))
          .isSubsetOf(ids)
          .contains("CTR1", "FRM1");
    }
    for (Element variable : elements(task, "PDV")) {
      assertThat(variable.getAttribute("C")).isIn(ids).isEqualTo("PDT1");
    }
  }

  /** Area in whole square metres; boundary (1) of an exterior ring (1) and interior ones (2). */
  @ParameterizedTest
  @CsvSource({"3,1", "4,2"})
  void partfieldsHaveAreaAndClosedRings(int version, int polygons) throws IOException {
    HandoverInput input = ranch(version);
    Element north = elements(written(input), "PFD").get(0);
    assertThat(north.getAttribute("D"))
        .isEqualTo(String.valueOf(Math.round(input.fields().get(0).shapeM().getArea())));
    assertThat(elements(north, "PLN"))
        .hasSize(polygons)
        .allMatch(p -> p.getAttribute("A").equals("1"));
    List<Element> rings = elements(north, "LSG");
    assertThat(rings).extracting(r -> r.getAttribute("A")).containsExactly("1", "2", "1");
    for (Element ring : rings) {
      List<Element> points = elements(ring, "PNT");
      assertThat(points).hasSizeGreaterThanOrEqualTo(4).allMatch(p -> isPoint(p));
      assertThat(at(points.get(0))).isEqualTo(at(points.get(points.size() - 1)));
    }
  }

  private static String at(Element point) {
    return point.getAttribute("C") + " " + point.getAttribute("D");
  }

  /** C is north, D is east, degrees of WGS 84: the ranch lies at 32.9 N, 111.2 W. */
  private static boolean isPoint(Element point) {
    double north = Double.parseDouble(point.getAttribute("C"));
    double east = Double.parseDouble(point.getAttribute("D"));
    return point.getAttribute("A").equals("2")
        && Math.abs(north - 32.9) < 0.1
        && Math.abs(east + 111.2) < 0.1;
  }

  /** Planned (1); position-lost and out-of-field codes exist and spread nothing; one grid. */
  @ParameterizedTest
  @ValueSource(ints = {3, 4})
  void tasksArePlannedAndSpreadNothingOutsideOrWhereThePositionIsLost(int version)
      throws IOException {
    List<Element> tasks = elements(written(ranch(version)), "TSK");
    assertThat(tasks).hasSize(2);
    for (Element task : tasks) {
      assertThat(task.getAttribute("G")).isEqualTo("1");
      Map<String, Integer> rates = rates(task);
      for (String code : List.of("I", "J")) {
        assertThat(task.getAttribute(code)).isNotEmpty();
        assertThat(rates.get(task.getAttribute(code))).isZero();
      }
      assertThat(elements(task, "GRD")).hasSize(1);
    }
  }

  private static Map<String, Integer> rates(Element task) {
    Map<String, Integer> rates = new LinkedHashMap<>();
    for (Element zone : elements(task, "TZN")) {
      assertThat(Integer.parseInt(zone.getAttribute("A"))).isBetween(0, 254);
      List<Element> variables = elements(zone, "PDV");
      assertThat(variables).hasSize(1);
      assertThat(variables.get(0).getAttribute("A")).as("mass per area").isEqualTo("0006");
      int raw = Integer.parseInt(variables.get(0).getAttribute("B"));
      assertThat(rates.put(zone.getAttribute("A"), raw)).as("each code once").isNull();
    }
    return rates;
  }

  /** 5 t/ha is 500 g/m², 500,000 mg/m²; 2.5 and 7.35 t/ha likewise. */
  @Test
  void ratesAreMilligramsPerSquareMetre() throws IOException {
    List<Element> tasks = elements(written(ranch(4)), "TSK");
    assertThat(rates(tasks.get(0)).values()).containsExactly(0, 250_000, 500_000);
    assertThat(rates(tasks.get(1)).values()).containsExactly(0, 735_000);
  }

  /** A byte a cell, as many as rows x columns; each a code of the task. J is for type 2 only. */
  @ParameterizedTest
  @ValueSource(ints = {3, 4})
  void gridsOfCodes(int version) throws IOException {
    for (Element task : elements(written(ranch(version)), "TSK")) {
      Element grid = elements(task, "GRD").get(0);
      assertThat(grid.getAttribute("I")).isEqualTo("1");
      assertThat(grid.hasAttribute("J")).isFalse();
      assertThat(grid.getAttribute("G")).matches("GRD\\d{5}");
      byte[] cells = cells(grid);
      int rows = Integer.parseInt(grid.getAttribute("F"));
      int columns = Integer.parseInt(grid.getAttribute("E"));
      assertThat(cells).hasSize(rows * columns);
      assertThat(grid.getAttribute("H")).isEqualTo(String.valueOf(cells.length));
      Set<String> codes = rates(task).keySet();
      Set<String> used = new TreeSet<>();
      for (byte cell : cells) {
        used.add(String.valueOf(cell & 0xFF));
      }
      assertThat(codes).containsAll(used);
      assertThat(used).hasSizeGreaterThan(1);
    }
  }

  /**
   * The first cell is the south-west one, rows run east, then north: a field with its eastern half
   * at 1 t/ha and its north-western quarter at 2.
   */
  @Test
  void cellsRunEastThenNorth() throws IOException {
    Map<String, Envelope> zones = new LinkedHashMap<>();
    zones.put("south-west", new Envelope(0, 60, 0, 60));
    zones.put("north-west", new Envelope(0, 60, 60, 120));
    zones.put("east", new Envelope(60, 120, 0, 120));
    Map<String, Double> rates = Map.of("south-west", 3.0, "north-west", 2.0, "east", 1.0);
    Element task = elements(written(field(zones, rates)), "TSK").get(0);
    Element grid = elements(task, "GRD").get(0);
    byte[] cells = cells(grid);
    int columns = Integer.parseInt(grid.getAttribute("E"));
    int rows = Integer.parseInt(grid.getAttribute("F"));
    int inner = 2; // cells in from each side are surely inside
    String southWest = code(cells[inner * columns + inner]);
    String southEast = code(cells[inner * columns + columns - 1 - inner]);
    String northWest = code(cells[(rows - 1 - inner) * columns + inner]);
    assertThat(rates(task).get(southWest)).isEqualTo(300_000);
    assertThat(rates(task).get(southEast)).isEqualTo(100_000);
    assertThat(rates(task).get(northWest)).isEqualTo(200_000);
  }

  private static String code(byte cell) {
    return String.valueOf(cell & 0xFF);
  }

  private static HandoverInput field(Map<String, Envelope> boxes, Map<String, Double> rates) {
    return SmallRanch.oneField("one", boxes, MachineJob.inOnePass("r", "gypsum", 12, 4, rates));
  }

  /** Codes go to 254, 0 being nothing: 254 rates still fit, 255 make a grid of rates. */
  @ParameterizedTest
  @CsvSource({"254,1", "255,2"})
  void fromTheTwoHundredAndFiftyFifthRateOnTheGridHoldsRates(int count, int type)
      throws IOException {
    Map<String, Envelope> zones = new LinkedHashMap<>();
    Map<String, Double> rates = new LinkedHashMap<>();
    for (int i = 0; i < count; i++) {
      double x = i % 20 * 30;
      double y = i / 20 * 30;
      zones.put("z" + i, new Envelope(x, x + 30, y, y + 30));
      rates.put("z" + i, 1 + i / 1000.0);
    }
    Element task = elements(written(field(zones, rates)), "TSK").get(0);
    Element grid = elements(task, "GRD").get(0);
    assertThat(grid.getAttribute("I")).isEqualTo(String.valueOf(type));
    byte[] cells = cells(grid);
    int places =
        Integer.parseInt(grid.getAttribute("E")) * Integer.parseInt(grid.getAttribute("F"));
    assertThat(cells).hasSize(type == 1 ? places : 4 * places);
    assertThat(grid.getAttribute("H")).isEqualTo(String.valueOf(cells.length));
    if (type == 1) {
      assertThat(rates(task)).hasSize(255).containsEntry("254", 125_300);
    } else {
      String template = grid.getAttribute("J");
      assertThat(rates(task)).as("the template's own value").containsEntry(template, 0);
      assertThat(List.of(task.getAttribute("I"), task.getAttribute("J"))).doesNotContain(template);
      ByteBuffer values = ByteBuffer.wrap(cells).order(ByteOrder.LITTLE_ENDIAN);
      Set<Integer> found = new TreeSet<>();
      while (values.hasRemaining()) {
        found.add(values.getInt());
      }
      assertThat(found).hasSize(256).contains(0, 100_000, 125_400);
    }
  }

  /** The name of a product, in any writing, is the user's. */
  @Test
  void theProductIsNamedAsTheUserNamedIt() throws IOException {
    HandoverInput input = SmallRanch.of("North", "South");
    MachineJob job =
        MachineJob.inOnePass(
            "r", "Yeso <agrícola> \u05D2\u05D1\u05E1 & \"92\"", 12, 4, Map.of("North-2", 5.0));
    Element product = elements(written(SmallRanch.with(input, job)), "PDT").get(0);
    assertThat(product.getAttribute("B")).isEqualTo("Yeso <agrícola> \u05D2\u05D1\u05E1 & \"92\"");
  }
}
