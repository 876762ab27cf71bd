package fieldsalt.handover.style;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.handover.Handover;
import fieldsalt.handover.SmallRanch;
import fieldsalt.handover.input.HandoverInput;
import fieldsalt.handover.input.Palette;
import fieldsalt.handover.input.SurfaceLabels;
import fieldsalt.handover.input.ZoneFeature;
import fieldsalt.handover.table.DbfNames;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/** Styled Layer Descriptor 1.0.0: well formed, and naming only what is in the layer. */
class StylesTest {
  private static final String SLD = "http://www.opengis.net/sld";
  private static final String OGC = "http://www.opengis.net/ogc";
  @TempDir Path dir;

  private Document parsed(String name) throws IOException {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    try (InputStream in = Files.newInputStream(dir.resolve(name))) {
      return factory.newDocumentBuilder().parse(in);
    } catch (ParserConfigurationException | SAXException e) {
      throw new AssertionError(name + " is not well formed", e);
    }
  }

  private static List<Element> elements(Document document, String namespace, String name) {
    NodeList found = document.getElementsByTagNameNS(namespace, name);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < found.getLength(); i++) {
      elements.add((Element) found.item(i));
    }
    return elements;
  }

  @Test
  void everyZoneMatchesOneRule() throws IOException {
    HandoverInput input = SmallRanch.of("North & \"<East>\"", "South");
    Handover.write(dir, input);
    Document zones = parsed("zones.sld");
    assertThat(zones.getDocumentElement().getAttribute("version")).isEqualTo("1.0.0");
    Set<String> known = input.zones().get(0).feature().properties().keySet();
    assertThat(elements(zones, OGC, "PropertyName"))
        .isNotEmpty()
        .allMatch(p -> known.contains(p.getTextContent()));
    List<String> classes =
        elements(zones, OGC, "Literal").stream().map(Element::getTextContent).toList();
    assertThat(classes).containsExactly("below 2 dS/m", "4 to 8 dS/m", "2 to 4 dS/m");
    assertThat(elements(zones, SLD, "CssParameter"))
        .extracting(Element::getTextContent)
        .contains(Palette.classes(4).get(0), Palette.classes(4).get(2), Palette.classes(4).get(1));
  }

  /** The names that the style uses are the Shapefile's too. */
  @Test
  void theStyleFitsTheShapefile() {
    assertThat(DbfNames.of(List.of("class", "field"))).containsExactly("class", "field");
  }

  @Test
  void aClassThatTwoFieldsDrawDifferentlyIsToldApart() throws IOException {
    HandoverInput input = SmallRanch.of("North", "South");
    List<ZoneFeature> zones = new ArrayList<>(input.zones());
    ZoneFeature last = zones.remove(4);
    zones.add(new ZoneFeature(last.zone(), last.properties(), 2));
    Files.writeString(dir.resolve("zones.sld"), Styles.zones(zones));
    assertThat(elements(parsed("zones.sld"), SLD, "Title"))
        .extracting(Element::getTextContent)
        .contains("North: 2 to 4 dS/m", "South: 2 to 4 dS/m", "below 2 dS/m");
  }

  @ParameterizedTest
  @ValueSource(strings = {"ece.sld", "ece-error.sld", "p-above.sld"})
  void rasterStylesRiseFromNothing(String name) throws IOException {
    Handover.write(dir, SmallRanch.of("North", "South"));
    List<Element> entries = elements(parsed(name), SLD, "ColorMapEntry");
    assertThat(entries).hasSize(7);
    assertThat(entries.get(0).getAttribute("quantity")).isEqualTo("-9999");
    assertThat(entries.get(0).getAttribute("opacity")).isEqualTo("0");
    double last = -9999;
    for (Element entry : entries.subList(1, 7)) {
      double quantity = Double.parseDouble(entry.getAttribute("quantity"));
      assertThat(quantity).isGreaterThan(last);
      assertThat(entry.getAttribute("color")).matches("#[0-9a-f]{6}");
      last = quantity;
    }
  }

  /** Uncertainty is never a hue: the error's style has one grey, only thicker. */
  @Test
  void theErrorIsAVeil() throws IOException {
    Handover.write(dir, SmallRanch.of("North", "South"));
    List<Element> entries = elements(parsed("ece-error.sld"), SLD, "ColorMapEntry").subList(1, 7);
    assertThat(entries).extracting(e -> e.getAttribute("color")).containsOnly("#808080");
    assertThat(entries)
        .extracting(e -> Double.parseDouble(e.getAttribute("opacity")))
        .isSorted()
        .endsWith(0.85);
  }

  @Test
  void anotherPropertyGetsStepsOverItsOwnValues() {
    HandoverInput input = SmallRanch.of("North", "South");
    String style = Styles.median(input.maps(), new SurfaceLabels("pH", "", false, "7"));
    assertThat(style).contains("quantity=\"1.025\"").doesNotContain("quantity=\"32\"");
  }
}
