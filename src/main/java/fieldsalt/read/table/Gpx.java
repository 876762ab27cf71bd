package fieldsalt.read.table;

import fieldsalt.finding.InputProblem;
import fieldsalt.read.file.InputFile;
import fieldsalt.read.file.TableRow;
import fieldsalt.read.file.TextDecoding;
import fieldsalt.read.word.HeaderText;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.locationtech.jts.geom.Coordinate;

/** Waypoints of a GPX file as a table of id and point. */
public final class Gpx {
  private Gpx() {}

  public static boolean isGpx(InputFile file) {
    String head =
        new String(
            Arrays.copyOf(file.bytes(), Math.min(2000, file.bytes().length)),
            StandardCharsets.ISO_8859_1);
    return file.extension().equals("gpx") || (head.contains("<gpx") && head.contains("<"));
  }

  /** A row per waypoint, its name as id. */
  public static Sheet read(InputFile file) {
    List<TableRow> rows = new ArrayList<>();
    try {
      XMLStreamReader xml = reader(file);
      while (xml.hasNext()) {
        if (xml.next() == XMLStreamConstants.START_ELEMENT && xml.getLocalName().equals("wpt")) {
          rows.add(waypoint(xml, rows.size() + 1));
        }
      }
    } catch (XMLStreamException | RuntimeException e) {
      throw new InputProblem(
              file.name(),
              "a GPX file that cannot be read",
              "waypoints with a name, lat and lon",
              "Export the waypoints again, or as CSV with id, lon, lat.")
          .because(e);
    }
    return new Sheet(file.name(), "waypoint", List.of(HeaderText.of("id")), rows, false);
  }

  private static XMLStreamReader reader(InputFile file) throws XMLStreamException {
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setXMLReporter((message, type, info, location) -> {});
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    return factory.createXMLStreamReader(new StringReader(TextDecoding.decode(file).strip()));
  }

  private static TableRow waypoint(XMLStreamReader xml, int number) throws XMLStreamException {
    double lat = Double.parseDouble(xml.getAttributeValue(null, "lat"));
    double lon = Double.parseDouble(xml.getAttributeValue(null, "lon"));
    String name = "";
    while (!(xml.next() == XMLStreamConstants.END_ELEMENT && xml.getLocalName().equals("wpt"))) {
      if (xml.isStartElement() && xml.getLocalName().equals("name")) {
        name = xml.getElementText().strip();
      }
    }
    return new TableRow(number, new String[] {name}, Optional.of(new Coordinate(lon, lat)));
  }
}
