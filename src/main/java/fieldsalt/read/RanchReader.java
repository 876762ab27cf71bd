package fieldsalt.read;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.finding.Place;
import fieldsalt.geo.Projections;
import fieldsalt.geo.RanchProjection;
import fieldsalt.quantity.Texture;
import fieldsalt.read.field.BoundaryFile;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.read.field.FieldFinder;
import fieldsalt.read.field.FieldsReader;
import fieldsalt.read.field.Overlaps;
import fieldsalt.read.file.InputFile;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.TieNote;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.Placing;
import fieldsalt.read.sample.Sample;
import fieldsalt.read.sample.Spot;
import fieldsalt.read.sample.UnplacedSample;
import fieldsalt.read.site.RowsToFields;
import fieldsalt.read.site.SamplesReader;
import fieldsalt.read.site.SiteList;
import fieldsalt.read.site.SitesReader;
import fieldsalt.read.site.SurveyReader;
import fieldsalt.read.site.SurveyReading;
import fieldsalt.read.table.LineCells;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * Reads all that a job names: fields, samples, sites, survey. Everything that is wrong is told at
 * once by one {@link InputProblem}; what could be left out or mended is a finding of the result.
 */
public final class RanchReader {
  private static final double HULL_SHARE = 0.1;
  private static final double LEAST_HA = 0.1;
  private static final double MOST_HA = 10_000;

  private final JobDocument job;
  private final Notes notes = new Notes();
  private final Map<String, String> hashes = new TreeMap<>();
  private final Set<String> mapped = new HashSet<>();

  private RanchReader(JobDocument job) {
    this.job = job;
    job.file().ifPresent(this::hashed);
  }

  /**
   * Reads a job whose fields are given.
   *
   * @return everything in metres of the UTM zone of the fields' middle, or of a local system
   * @throws InputProblem all that a person has to mend, at once
   */
  public static Ranch read(JobDocument job) {
    RanchReader reader = new RanchReader(job);
    if (!job.given("fields")) {
      reader.missing("fields", "field boundaries", "--fields F");
    }
    return reader.ranch(false, List.of());
  }

  /** Reads a job; without fields the hull of the sites, widened, is the one field. */
  public static Ranch readOrHull(JobDocument job) {
    return new RanchReader(job).ranch(!job.given("fields"), List.of());
  }

  /** The same where the hull must also hold the places of other samples, to compare with. */
  public static Ranch readOrHull(JobDocument job, Path points) {
    boolean hull = !job.given("fields");
    List<UnplacedSample> also = hull ? new RanchReader(job).rows(List.of(points)) : List.of();
    return new RanchReader(job).ranch(hull, also);
  }

  /**
   * Reads a table of readings without any field file. Samples have no field; their place is in the
   * UTM zone of their middle where the table has coordinates.
   */
  public static Ranch readTable(JobDocument job, List<Path> tables) {
    return new RanchReader(job).table(tables);
  }

  /**
   * Samples to hold a map against.
   *
   * @param findings what was left out or mended in them
   * @param hashes of the files read
   */
  public record Points(List<Sample> samples, List<Finding> findings, Map<String, String> hashes) {
    public Points {
      samples = List.copyOf(samples);
      findings = List.copyOf(findings);
      hashes = Map.copyOf(hashes);
    }
  }

  /** Reads samples in the samples format for a ranch already read, by the same job. */
  public static Points readPoints(JobDocument job, Path points, Ranch ranch) {
    return new RanchReader(job).points(points, ranch);
  }

  private void missing(String key, String what, String flag) {
    notes.problem(
        job.name(), "no " + key, what, "Say " + key + ": FILE in the job, or give " + flag + ".");
  }

  /** A survey alone is no map of ECe: moisture, texture and temperature are in it as well. */
  private String onlySurvey() {
    return job.given("survey")
        ? ". A survey of apparent conductivity cannot be turned into ECe without cores: take 12 to"
            + " 20, spread over its low, middle and high values, on the day of the survey; then it"
            + " steers the map between them"
        : "";
  }

  private Optional<InputFile> file(Path path) {
    try {
      InputFile file = InputFile.read(path);
      hashed(file);
      return Optional.of(file);
    } catch (InputProblem e) {
      notes.problem(e);
      return Optional.empty();
    }
  }

  private void hashed(InputFile file) {
    String hash = file.sha256();
    String before = hashes.putIfAbsent(file.name(), hash);
    if (before != null && !before.equals(hash)) {
      hashes.put(job.folder().relativize(file.path().toAbsolutePath()).toString(), hash);
    }
  }

  private <T> T trying(T otherwise, Function<InputFile, T> read, Optional<InputFile> file) {
    try {
      return file.map(read).orElse(otherwise);
    } catch (InputProblem e) {
      notes.problem(e);
      return otherwise;
    }
  }

  private boolean isLocal() {
    return job.word("crs").equals("local");
  }

  private List<InputFile> files(List<Path> paths) {
    return paths.stream().flatMap(p -> file(p).stream()).toList();
  }

  private List<UnplacedSample> rows(List<Path> paths) {
    SiteList sites =
        trying(
            SiteList.none(),
            f -> SitesReader.read(f, job, mapped, notes),
            job.path("sites").flatMap(this::file));
    SamplesReader reader = new SamplesReader(job, sites, paths.size() == 1, mapped, notes);
    return reader.joined(reader.read(files(paths)), sites);
  }

  private Ranch ranch(boolean hull, List<UnplacedSample> also) {
    if (!job.given("samples")) {
      missing("samples", "laboratory readings", "--samples S" + onlySurvey());
    }
    List<FieldBoundary> drawn =
        trying(
            List.of(),
            f -> FieldsReader.read(BoundaryFile.read(f, this::hashed, notes), isLocal(), notes),
            job.path("fields").flatMap(this::file));
    List<UnplacedSample> rows = rows(job.paths("samples"));
    Optional<InputFile> survey = job.path("survey").flatMap(this::file);
    survey.ifPresent(this::checkSurveyIsNoSamples);
    job.paths("drift").forEach(this::file);
    if ((!hull && drawn.isEmpty()) || rows.isEmpty()) {
      notes.stopIfProblems();
    }
    RanchProjection projection = projection(drawn, rows);
    Placing placing = placing(projection);
    tellTie(drawn, rows);
    List<FieldBoundary> fields =
        hull
            ? hull(Stream.concat(rows.stream(), also.stream()).toList(), placing)
            : drawn.stream().map(f -> inMetres(f, projection)).toList();
    List<Sample> samples = samples(rows, fields, placing);
    List<SurveyReading> readings =
        trying(List.of(), f -> SurveyReader.read(f, job, placing, mapped, notes), survey);
    tellSurveyElsewhere(readings, fields);
    tellUnmapped();
    notes.stopIfProblems();
    return new Ranch(
        job.word("ranch"), projection, fields, samples, readings, hashes, notes.findings());
  }

  /** Readings as their own survey would predict themselves without any error. */
  private void checkSurveyIsNoSamples(InputFile survey) {
    if (job.paths("samples").stream().anyMatch(p -> p.equals(survey.path()))) {
      notes.problem(
          "survey",
          survey.name() + ", which is the samples file",
          "readings of a sensor that was driven over the field",
          "Name the survey's own file, or leave survey out.");
    }
  }

  private Placing placing(RanchProjection projection) {
    try {
      return Placing.of(projection, job.word("crs"));
    } catch (InputProblem e) {
      notes.problem(e);
      notes.stopIfProblems();
      throw e;
    }
  }

  /** How well x and y of tables are tied, by the fields' place, else by their own. */
  private void tellTie(List<FieldBoundary> fields, List<UnplacedSample> rows) {
    String crs = job.word("crs");
    if (!crs.startsWith("EPSG:")) {
      return;
    }
    Envelope box = fields.isEmpty() ? box(rows) : new Envelope();
    fields.forEach(field -> box.expandToInclude(field.shapeM().getEnvelopeInternal()));
    if (!box.isNull()) {
      try {
        TieNote tie = new TieNote("crs", Projections.source(crs));
        tie.at(box);
        tie.tell(notes);
      } catch (InputProblem e) {
        // no shift for there: the rows that need one are told one by one
        return;
      }
    }
  }

  private RanchProjection projection(List<FieldBoundary> fields, List<UnplacedSample> rows) {
    if (isLocal()) {
      return Projections.local();
    }
    try {
      return fields.isEmpty() ? ofRows(rows) : ofFields(fields);
    } catch (InputProblem e) {
      String file =
          fields.isEmpty()
              ? "samples"
              : job.path("fields").map(Path::getFileName).map(Path::toString).orElse("");
      e.problems()
          .forEach(
              p -> notes.problem(file + ", " + p.where(), p.found(), p.expected(), p.remedy()));
      notes.stopIfProblems();
      throw e;
    }
  }

  private static RanchProjection ofFields(List<FieldBoundary> fields) {
    Envelope box = new Envelope();
    double area = 0;
    double x = 0;
    double y = 0;
    for (FieldBoundary field : fields) {
      Coordinate centre = field.shapeM().getCentroid().getCoordinate();
      double weight = field.shapeM().getArea() * Math.cos(Math.toRadians(centre.y));
      box.expandToInclude(field.shapeM().getEnvelopeInternal());
      area += weight;
      x += weight * centre.x;
      y += weight * centre.y;
    }
    RanchProjection checked = Projections.utmFor(box);
    return area > 0 ? Projections.utmFor(x / area, y / area) : checked;
  }

  private RanchProjection ofRows(List<UnplacedSample> rows) {
    Envelope box = box(rows);
    return box.isNull() ? Projections.local() : Projections.utmFor(box);
  }

  private Envelope box(List<UnplacedSample> rows) {
    Envelope box = new Envelope();
    String crs = job.word("crs");
    for (UnplacedSample row : rows) {
      if (row.spot().isPresent() && (row.spot().get().degrees() || !crs.equals("auto"))) {
        Placing.degrees(row.spot().get(), crs).ifPresent(d -> box.expandToInclude(d[0], d[1]));
      }
    }
    return box;
  }

  private static FieldBoundary inMetres(FieldBoundary field, RanchProjection projection) {
    return withShape(field, projection.toMetres(field.shapeM()));
  }

  private static FieldBoundary withShape(FieldBoundary field, Geometry shape) {
    return new FieldBoundary(field.name(), shape, field.crop(), field.texture(), field.clayPct());
  }

  private List<FieldBoundary> hull(List<UnplacedSample> rows, Placing placing) {
    List<Coordinate> places = new ArrayList<>();
    for (UnplacedSample row : rows) {
      row.spot()
          .filter(s -> s.degrees() || placing.knowsXy())
          .flatMap(placing::place)
          .ifPresent(p -> places.add(new Coordinate(p.xM(), p.yM())));
    }
    if (places.isEmpty()) {
      return List.of();
    }
    Geometry hull =
        new GeometryFactory()
            .createMultiPointFromCoords(places.toArray(Coordinate[]::new))
            .convexHull();
    Envelope box = hull.getEnvelopeInternal();
    double widthM = Math.max(RowsToFields.REACH_M, HULL_SHARE * box.getDiameter());
    notes.finding(
        Code.HULL,
        Place.file(job.name()),
        "no fields",
        "mapped within " + LineCells.plain(Math.rint(widthM)) + " m around the hull of the sites");
    return List.of(
        new FieldBoundary(
            "sites",
            hull.buffer(widthM),
            Optional.empty(),
            Texture.UNKNOWN,
            OptionalDouble.empty()));
  }

  private List<Sample> samples(
      List<UnplacedSample> rows, List<FieldBoundary> fields, Placing placing) {
    if (fields.isEmpty()) {
      return List.of();
    }
    Overlaps.tell(fields, notes);
    fields.forEach(this::tellSize);
    RowsToFields assignment = new RowsToFields(placing, fields, notes);
    List<Sample> samples = assignment.samples(rows);
    if (samples.isEmpty() && !rows.isEmpty() && !notes.hasProblems()) {
      nobodyInside(rows, assignment);
    }
    return samples;
  }

  private void tellSize(FieldBoundary field) {
    double ha = field.shapeM().getArea() / 1e4;
    if (!isLocal() && (ha < LEAST_HA || ha > MOST_HA)) {
      notes.finding(
          Code.FIELD_SIZE,
          Place.field(field.name()),
          LineCells.plain(ha) + " ha of ground",
          "kept; check the boundary and its coordinate system");
    }
  }

  private void nobodyInside(List<UnplacedSample> rows, RowsToFields assignment) {
    UnaryOperator<Spot> swapped = s -> Spot.lonLat(s.b(), s.a());
    UnaryOperator<Spot> south = s -> Spot.lonLat(s.a(), -s.b());
    UnaryOperator<Spot> west = s -> Spot.lonLat(-s.a(), s.b());
    long placed = rows.stream().filter(r -> r.spot().isPresent()).count();
    String remedy;
    if (placed == 0) {
      remedy = "Give lon and lat columns, or name a file of coordinates by id with sites:.";
    } else if (assignment.countInside(rows, swapped) > 0) {
      remedy =
          "Latitude and longitude look swapped, here or in the boundaries: name the columns right,"
              + " or mend the file that is wrong.";
    } else if (assignment.countInside(rows, west) > 0) {
      remedy =
          "The longitudes look as if their minus sign (west) was lost, here or in the boundaries.";
    } else if (assignment.countInside(rows, south) > 0) {
      remedy =
          "The latitudes look as if their minus sign (south) was lost, here or in the boundaries.";
    } else {
      remedy = "Check that samples and fields are of the same ranch and their crs is right.";
    }
    notes.problem(
        String.join(
            ", ", job.paths("samples").stream().map(p -> String.valueOf(p.getFileName())).toList()),
        placed == 0 ? "no row with a place" + badCoordinate() : "no site in or near any field",
        "sites inside the fields",
        remedy);
  }

  private void tellSurveyElsewhere(List<SurveyReading> survey, List<FieldBoundary> fields) {
    FieldFinder finder = new FieldFinder(fields, RowsToFields.REACH_M);
    if (!survey.isEmpty() && survey.stream().noneMatch(r -> finder.find(r.place()).isPresent())) {
      notes.finding(
          Code.SURVEY_ELSEWHERE,
          Place.file(job.path("survey").map(p -> String.valueOf(p.getFileName())).orElse("survey")),
          "no reading in or near any field",
          "of no use for the map; check its coordinates and crs");
    }
  }

  private String badCoordinate() {
    return notes.findings().stream()
        .filter(f -> f.code() == Code.BAD_COORDINATE)
        .map(f -> " (" + f.where() + ": " + f.found() + ")")
        .findFirst()
        .orElse("");
  }

  private void tellUnmapped() {
    for (String ours : job.names("columns")) {
      List<String> headers = job.texts("columns", ours);
      headers.stream()
          .filter(h -> !mapped.contains(h))
          .forEach(
              h ->
                  notes.problem(
                      job.place("columns", ours) + ", key columns." + ours,
                      "'" + h + "'",
                      "a header of one of the files",
                      "Write the header as it stands in the file."));
    }
  }

  private Ranch table(List<Path> tables) {
    List<UnplacedSample> rows = rows(tables);
    tellUnmapped();
    notes.stopIfProblems();
    RanchProjection projection = projection(List.of(), rows);
    Placing placing = placing(projection);
    List<Sample> samples = new ArrayList<>();
    for (UnplacedSample row : rows) {
      boolean placeable = row.spot().filter(s -> s.degrees() || placing.knowsXy()).isPresent();
      samples.add(
          row.sample()
              .withField(
                  row.fieldSaid(), placeable ? placing.place(row.spot().get()) : Optional.empty()));
    }
    return new Ranch(
        job.word("ranch"), projection, List.of(), samples, List.of(), hashes, notes.findings());
  }

  private Points points(Path points, Ranch ranch) {
    List<UnplacedSample> rows = rows(List.of(points));
    notes.stopIfProblems();
    RowsToFields assignment = new RowsToFields(placing(ranch.projection()), ranch.fields(), notes);
    List<Sample> samples = assignment.samples(rows);
    notes.stopIfProblems();
    List<Finding> findings =
        notes.findings().stream().filter(f -> f.code() != Code.FIELD_WITHOUT_SITES).toList();
    return new Points(samples, findings, hashes);
  }
}
