package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import java.util.zip.ZipFile;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/**
 * From samples to the spreader: a ranch whose eastern half is sodic (SAR 28) is given gypsum, in
 * rates that a machine of 2 to 8 t/ha in steps of 0.5 can spread.
 */
class MachineFileTest {
  @TempDir static Path temp;
  private static Path folder;
  private static Run run;

  @BeforeAll
  static void mapOnce() throws IOException {
    folder = temp.resolve("out");
    run = map(folder);
  }

  private static Run map(Path out) throws IOException {
    Path job = temp.resolve("job.yaml");
    Files.writeString(
        job,
        """
        ranch: "Sodic half"
        fields: fields.geojson
        samples: samples.csv
        drainage: good
        zones: {sodicity: yes, by: nrcs}
        gypsum: {purity-pct: 85, moisture-pct: 5}
        machine: {swath-m: 18, min: 2, max: 8, step: 0.5, product: "Gypsum, yard 2"}
        """);
    ranch().write();
    return Run.of("map", job, "-o", out, "--quiet");
  }

  private static TestRanch ranch() {
    Random random = new Random(3);
    TestRanch ranch =
        new TestRanch(temp, "depth,method,ec,unit,sar,cec_cmol_kg").field("delta", 0, 700, 400);
    for (int i = 0; i < 35; i++) {
      double x = 50 + i % 7 * 100 + 30 * (random.nextDouble() - 0.5);
      double y = 40 + i / 7 * 80 + 30 * (random.nextDouble() - 0.5);
      double sar = (x > 350 ? 28 : 5) * Math.exp(0.07 * random.nextGaussian());
      double ec = 3 * Math.exp(0.002 * (y - 200) + 0.07 * random.nextGaussian());
      ranch.sample(x, y, "0-90 cm,paste,%.3f,dS/m,%.2f,22", ec, sar);
    }
    return ranch;
  }

  private static Document taskData(ZipFile zip) throws IOException {
    try (InputStream in = zip.getInputStream(zip.getEntry("TASKDATA/TASKDATA.XML"))) {
      return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(in);
    } catch (ParserConfigurationException | SAXException e) {
      throw new AssertionError(e);
    }
  }

  /** Tonnes that the terminal spreads: each cell's rate by its area on the ground. */
  private static double tonnes(Path out) throws IOException {
    double tonnes = 0;
    try (ZipFile zip = new ZipFile(out.resolve("TASKDATA.zip").toFile())) {
      NodeList tasks = taskData(zip).getElementsByTagName("TSK");
      for (int t = 0; t < tasks.getLength(); t++) {
        tonnes += tonnes(zip, (Element) tasks.item(t));
      }
    }
    return tonnes;
  }

  private static double tonnes(ZipFile zip, Element task) throws IOException {
    Map<Integer, Double> rates = new HashMap<>();
    NodeList zones = task.getElementsByTagName("TZN");
    for (int z = 0; z < zones.getLength(); z++) {
      Element zone = (Element) zones.item(z);
      Element variable = (Element) zone.getElementsByTagName("PDV").item(0);
      rates.put(
          Integer.parseInt(zone.getAttribute("A")),
          Integer.parseInt(variable.getAttribute("B")) / 100_000.0);
    }
    Element grid = (Element) task.getElementsByTagName("GRD").item(0);
    byte[] cells =
        zip.getInputStream(zip.getEntry("TASKDATA/" + grid.getAttribute("G") + ".BIN"))
            .readAllBytes();
    double hectares = cellHa(grid);
    double tonnes = 0;
    for (byte cell : cells) {
      tonnes += rates.get(cell & 0xFF) * hectares;
    }
    return tonnes;
  }

  /** Also: no side of a cell is shorter than half a swath of 18 m. */
  private static double cellHa(Element grid) {
    double south = Double.parseDouble(grid.getAttribute("A"));
    double west = Double.parseDouble(grid.getAttribute("B"));
    double north = south + Double.parseDouble(grid.getAttribute("C"));
    double east = west + Double.parseDouble(grid.getAttribute("D"));
    double wide =
        TestRanch.UTM.toMetres(west, south).distanceM(TestRanch.UTM.toMetres(east, south));
    double high =
        TestRanch.UTM.toMetres(west, south).distanceM(TestRanch.UTM.toMetres(west, north));
    assertThat(Math.min(wide, high)).isBetween(8.999, 9.05);
    return wide * high / 10_000;
  }

  @Test
  void theSodicHalfIsGivenRatesThatTheMachineCanSpread() throws IOException {
    assertThat(run.code()).as(run.err()).isZero();
    JsonNode zones =
        new ObjectMapper().readTree(folder.resolve("zones.geojson").toFile()).path("features");
    int spread = 0;
    for (JsonNode zone : zones) {
      JsonNode p = zone.path("properties");
      double rate = p.path("rate_t_ha").asDouble();
      if (p.path("sodicity").asText().equals("sodic")) {
        spread++;
        assertThat(rate).as(p.toString()).isBetween(2.0, 8.0);
        assertThat(2 * rate).isCloseTo(Math.rint(2 * rate), within(1e-9));
        assertThat(p.path("gypsum_t_ha").asDouble())
            .isCloseTo(rate * p.path("gypsum_passes").asInt(), within(0.005));
      } else {
        assertThat(rate).isZero();
      }
    }
    assertThat(spread).isPositive();
  }

  /** Rate x area of the plan, of rates.csv's zones and of the machine file agree to 0.5 %. */
  @Test
  void theMachineSpreadsThePlansTonnes() throws IOException {
    JsonNode record = new ObjectMapper().readTree(folder.resolve("run.json").toFile());
    double planned = record.path("plan").path("planned_t").asDouble();
    assertThat(planned).isGreaterThan(20);
    assertThat(tonnes(folder)).isCloseTo(planned, within(0.005 * planned));
    double byZones = 0;
    for (JsonNode zone :
        new ObjectMapper().readTree(folder.resolve("zones.geojson").toFile()).path("features")) {
      JsonNode p = zone.path("properties");
      byZones +=
          p.path("rate_t_ha").asDouble()
              * p.path("gypsum_passes").asInt()
              * p.path("area_ha").asDouble();
    }
    assertThat(byZones).isCloseTo(planned, within(0.001 * planned));
    try (ZipFile zip = new ZipFile(folder.resolve("TASKDATA.zip").toFile())) {
      Element product = (Element) taskData(zip).getElementsByTagName("PDT").item(0);
      assertThat(product.getAttribute("B")).isEqualTo("Gypsum, yard 2");
    }
  }
}
