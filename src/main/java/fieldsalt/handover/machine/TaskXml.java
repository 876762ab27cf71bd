package fieldsalt.handover.machine;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.handover.input.MachineJob;
import fieldsalt.handover.table.Rounding;
import fieldsalt.handover.table.Xml;
import fieldsalt.read.field.FieldBoundary;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * The text of {@code TASKDATA.XML}. Version 4 has a polygon for each part of a partfield; version 3
 * allows one polygon only, which then holds the rings of every part. Customer and farm are given
 * because some terminals list tasks by them.
 */
final class TaskXml {
  /** Longest designator that the schema allows, in characters. */
  private static final int LONGEST_NAME = 32;

  private final MachineJob job;
  private final List<Finding> findings;
  private final Map<String, String> cutFrom = new HashMap<>();
  private final StringBuilder body = new StringBuilder();

  TaskXml(MachineJob job, List<Finding> findings) {
    this.job = job;
    this.findings = findings;
    String ranch = name(job.ranch().isBlank() ? "ranch" : job.ranch(), "ranch");
    body.append("  <CTR A=\"CTR1\" B=\"").append(ranch).append("\"/>\n");
    body.append("  <FRM A=\"FRM1\" B=\"").append(ranch).append("\" I=\"CTR1\"/>\n");
  }

  /** A name as an attribute; what is too long is cut between characters, with a finding. */
  private String name(String text, String what) {
    if (text.codePointCount(0, text.length()) <= LONGEST_NAME) {
      return Xml.escape(text);
    }
    String cut = distinct(text, what);
    Finding finding =
        new Finding(
            Code.TEXT_CUT,
            new Place.InFile("TASKDATA.zip", "name of the " + what),
            text.codePointCount(0, text.length()) + " characters",
            "cut to the 32 that a terminal shows: " + cut);
    if (!findings.contains(finding)) {
      findings.add(finding);
    }
    return Xml.escape(cut);
  }

  /** The beginning of a long name; a number ends it where another long name begins alike. */
  private String distinct(String text, String what) {
    String cut = text.substring(0, text.offsetByCodePoints(0, LONGEST_NAME));
    for (int i = 2; !text.equals(cutFrom.computeIfAbsent(what + cut, key -> text)); i++) {
      String end = "~" + i;
      cut = text.substring(0, text.offsetByCodePoints(0, LONGEST_NAME - end.length())) + end;
    }
    return cut;
  }

  void partfield(int number, FieldBoundary field, Geometry degrees) {
    body.append("  <PFD A=\"PFD").append(number).append("\" C=\"");
    body.append(name(field.name(), "field")).append("\" D=\"");
    body.append(Math.round(field.shapeM().getArea()));
    body.append("\" E=\"CTR1\" F=\"FRM1\">\n");
    for (int i = 0; i < degrees.getNumGeometries(); i++) {
      polygon((Polygon) degrees.getGeometryN(i), i == 0, i == degrees.getNumGeometries() - 1);
    }
    body.append("  </PFD>\n");
  }

  private void polygon(Polygon part, boolean first, boolean last) {
    boolean each = job.version() == 4;
    if (each || first) {
      body.append("    <PLN A=\"1\">\n");
    }
    ring(part.getExteriorRing(), 1);
    for (int i = 0; i < part.getNumInteriorRing(); i++) {
      ring(part.getInteriorRingN(i), 2);
    }
    if (each || last) {
      body.append("    </PLN>\n");
    }
  }

  private void ring(LinearRing ring, int type) {
    body.append("      <LSG A=\"").append(type).append("\">\n");
    for (Coordinate at : ring.getCoordinates()) {
      body.append("        <PNT A=\"2\" C=\"").append(Rounding.plain(at.y, 7));
      body.append("\" D=\"").append(Rounding.plain(at.x, 7)).append("\"/>\n");
    }
    body.append("      </LSG>\n");
  }

  void product() {
    String product = job.product().isBlank() ? "product" : job.product();
    body.append("  <PDT A=\"PDT1\" B=\"").append(name(product, "product")).append("\"/>\n");
  }

  /**
   * A task.
   *
   * @param number from 1
   * @param partfield number of its field
   */
  record Task(int number, String name, int partfield) {}

  /**
   * Begins a planned task; its grid must follow.
   *
   * @param rates of the codes 1, 2, ...; empty if the grid holds the rates themselves
   */
  void task(Task task, List<Integer> rates) {
    body.append("  <TSK A=\"TSK").append(task.number()).append("\" B=\"");
    body.append(name(task.name(), "field"));
    body.append("\" C=\"CTR1\" D=\"FRM1\" E=\"PFD").append(task.partfield());
    body.append("\" G=\"1\" I=\"0\" J=\"0\">\n");
    treatmentZone(0, "nothing", 0);
    for (int code = 1; code <= rates.size(); code++) {
      treatmentZone(code, label(rates.get(code - 1)), rates.get(code - 1));
    }
    if (rates.isEmpty()) {
      treatmentZone(1, "rate of the cell", 0);
    }
  }

  private static String label(int raw) {
    return Rounding.plain(raw / 100_000.0, 3) + " t/ha";
  }

  private void treatmentZone(int code, String name, int raw) {
    body.append(
        String.format(
            Locale.ROOT,
            "    <TZN A=\"%d\" B=\"%s\"><PDV A=\"%s\" B=\"%d\" C=\"PDT1\"/></TZN>\n",
            code,
            name,
            ProcessData.MASS_PER_AREA.ddi(),
            raw));
  }

  /**
   * The grid of the task begun last, and that task's end.
   *
   * @param coded whether a cell holds a treatment zone code; else a rate
   */
  void grid(TaskGrid grid, String file, int bytes, boolean coded) {
    body.append("    <GRD A=\"").append(Rounding.plain(grid.minNorth(), 9));
    body.append("\" B=\"").append(Rounding.plain(grid.minEast(), 9));
    body.append("\" C=\"").append(Rounding.plain(grid.cellNorth(), 11));
    body.append("\" D=\"").append(Rounding.plain(grid.cellEast(), 11));
    body.append("\" E=\"").append(grid.columns()).append("\" F=\"").append(grid.rows());
    body.append("\" G=\"").append(file).append("\" H=\"").append(bytes);
    body.append(coded ? "\" I=\"1\"/>\n" : "\" I=\"2\" J=\"1\"/>\n");
    body.append("  </TSK>\n");
  }

  String document() {
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
        + "<ISO11783_TaskData VersionMajor=\""
        + job.version()
        + "\" VersionMinor=\"3\" ManagementSoftwareManufacturer=\"fieldsalt\""
        + " ManagementSoftwareVersion=\"1\" TaskControllerManufacturer=\"\""
        + " TaskControllerVersion=\"\" DataTransferOrigin=\"1\">\n"
        + body
        + "</ISO11783_TaskData>\n";
  }
}
