package fieldsalt.read.site;

import fieldsalt.finding.InputProblem;
import fieldsalt.geo.Projections;
import fieldsalt.geo.RanchProjection;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.read.file.DatumShiftNote;
import fieldsalt.read.file.Notes;
import fieldsalt.read.sample.Placing;
import fieldsalt.read.sample.Spot;
import fieldsalt.read.sample.UnplacedSample;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/** The projection of a ranch: for where its fields lie, else its samples. */
public final class RanchSystem {
  private final List<FieldBoundary> fields;
  private final List<UnplacedSample> samples;
  private final String crs;

  /**
   * @param fields in degrees (in metres for a local system)
   * @param crs the job's: {@code auto}, {@code local} or {@code EPSG:n}
   */
  public RanchSystem(List<FieldBoundary> fields, List<UnplacedSample> samples, String crs) {
    this.fields = fields;
    this.samples = samples;
    this.crs = crs;
  }

  /**
   * The projection.
   *
   * @param file the field file, for messages
   * @throws InputProblem all problems so far, if the ranch has none
   */
  public RanchProjection projection(String file, Notes notes) {
    if (crs.equals("local")) {
      return Projections.local();
    }
    try {
      return fields.isEmpty() ? ofSamples() : ofFields();
    } catch (InputProblem e) {
      throw stop(notes, e.within(fields.isEmpty() ? "samples" : file));
    }
  }

  private static InputProblem stop(Notes notes, InputProblem last) {
    notes.problem(last);
    notes.stopIfProblems();
    return last;
  }

  private RanchProjection ofFields() {
    double area = 0;
    double x = 0;
    double y = 0;
    for (FieldBoundary field : fields) {
      Coordinate centre = field.shapeM().getCentroid().getCoordinate();
      double weight = field.shapeM().getArea() * Math.cos(Math.toRadians(centre.y));
      area += weight;
      x += weight * centre.x;
      y += weight * centre.y;
    }
    RanchProjection checked = Projections.utmFor(boxOfFields());
    return area > 0 ? Projections.utmFor(x / area, y / area) : checked;
  }

  private RanchProjection ofSamples() {
    Envelope box = boxOfSamples();
    return box.isNull() ? Projections.local() : Projections.utmFor(box);
  }

  private Envelope boxOfFields() {
    Envelope box = new Envelope();
    fields.forEach(field -> box.expandToInclude(field.shapeM().getEnvelopeInternal()));
    return box;
  }

  private Envelope boxOfSamples() {
    Envelope box = new Envelope();
    for (UnplacedSample sample : samples) {
      Optional<Spot> spot = sample.spot().filter(s -> s.degrees() || !crs.equals("auto"));
      spot.flatMap(s -> Placing.degrees(s, crs)).ifPresent(d -> box.expandToInclude(d[0], d[1]));
    }
    return box;
  }

  /** How the coordinates of samples come to be metres of a projection. */
  public Placing placing(RanchProjection projection, Notes notes) {
    try {
      return Placing.of(projection, crs);
    } catch (InputProblem e) {
      throw stop(notes, e);
    }
  }

  /** How accurate the shift of x and y of tables to WGS 84 is, where the fields lie. */
  public void noteDatumShift(Notes notes) {
    Envelope box = fields.isEmpty() && crs.startsWith("EPSG:") ? boxOfSamples() : boxOfFields();
    if (box.isNull() || !crs.startsWith("EPSG:")) {
      return;
    }
    try {
      DatumShiftNote shift = new DatumShiftNote("crs", Projections.source(crs));
      shift.add(box);
      shift.noteIn(notes);
    } catch (InputProblem e) {
      // no shift for that place: each row that needs one is a finding of its own
      return;
    }
  }
}
