package fieldsalt.read;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.finding.Place;
import fieldsalt.geo.PlaceM;
import fieldsalt.geo.RanchProjection;
import fieldsalt.read.field.BoundaryFile;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.read.field.FieldFinder;
import fieldsalt.read.field.FieldJobs;
import fieldsalt.read.field.FieldsReader;
import fieldsalt.read.field.HullField;
import fieldsalt.read.field.Overlaps;
import fieldsalt.read.file.InputFile;
import fieldsalt.read.file.InputFiles;
import fieldsalt.read.file.Notes;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.PersonsWord;
import fieldsalt.read.sample.Placing;
import fieldsalt.read.sample.ReadingRules;
import fieldsalt.read.sample.Sample;
import fieldsalt.read.sample.Spot;
import fieldsalt.read.sample.UnplacedSample;
import fieldsalt.read.site.CoordinateSlip;
import fieldsalt.read.site.JobColumns;
import fieldsalt.read.site.MatchedRows;
import fieldsalt.read.site.RanchSystem;
import fieldsalt.read.site.SamplesInFields;
import fieldsalt.read.site.SamplesReader;
import fieldsalt.read.site.SiteList;
import fieldsalt.read.site.SitesReader;
import fieldsalt.read.site.SurveyReader;
import fieldsalt.read.site.SurveyReading;
import fieldsalt.read.word.PlainText;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Reads all that a job names: fields, samples, sites, survey. Everything that is wrong comes at
 * once in one {@link InputProblem}; what could be left out or corrected is a finding of the result.
 */
public final class RanchReader {
  private static final double LEAST_HA = 0.1;
  private static final double MOST_HA = 10_000;

  private final JobDocument job;
  private final boolean local;
  private final Notes notes = new Notes();
  private final InputFiles files;
  private final JobColumns columns;

  private RanchReader(JobDocument job) {
    this.job = job;
    this.local = job.word("crs").equals("local");
    this.files = new InputFiles(job.folder(), notes);
    this.columns = new JobColumns(job);
    job.file().ifPresent(files::add);
  }

  /**
   * Reads a job whose fields are given.
   *
   * @return everything in metres of the UTM zone of the fields' middle, or of a local system
   * @throws InputProblem all that a person has to correct, at once
   */
  public static Ranch read(JobDocument job) {
    RanchReader reader = new RanchReader(job);
    if (!job.given("fields")) {
      reader.noteMissing("fields", "field boundaries", "--fields F");
    }
    return reader.ranch(false, List.of());
  }

  /**
   * Reads a job; without fields the hull of the sites, widened, is the one field.
   *
   * @param points other samples, to compare with, which the hull holds too
   */
  public static Ranch readOrHull(JobDocument job, Path points) {
    boolean hull = !job.given("fields");
    List<UnplacedSample> also = hull ? new RanchReader(job).samples(List.of(points)) : List.of();
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
   * @param sites how many sites the file has, wherever they lie
   * @param findings what was left out or corrected in them
   */
  public record Points(List<Sample> samples, int sites, List<Finding> findings) {
    public Points {
      samples = List.copyOf(samples);
      findings = List.copyOf(findings);
    }
  }

  /** Reads samples in the samples format for a ranch already read, by the same job. */
  public static Points readPoints(JobDocument job, Path points, Ranch ranch) {
    return new RanchReader(job).points(points, ranch);
  }

  private void noteMissing(String key, String what, String flag) {
    notes.problem(
        job.name(), "no " + key, what, "Set " + key + ": FILE in the job, or give " + flag + ".");
  }

  /** A survey alone is no map of ECe: moisture, texture and temperature are in it as well. */
  private String onlySurvey() {
    return job.given("survey")
        ? ". A survey of apparent conductivity cannot be turned into ECe without cores: take 12 to"
            + " 20, spread over its low, middle and high values, on the day of the survey; then it"
            + " guides the map between them"
        : "";
  }

  /** The job's own samples, as the person's word leaves them. */
  private List<UnplacedSample> ownSamples(List<Path> paths) {
    return PersonsWord.of(job, paths.size() == 1).kept(samples(paths), notes);
  }

  private List<UnplacedSample> samples(List<Path> paths) {
    SiteList sites =
        files.orNote(
            SiteList.none(),
            file -> SitesReader.read(file, columns, local, notes),
            job.path("sites").flatMap(files::read));
    ReadingRules rules = new ReadingRules(job, sites.keys(), paths.size() == 1);
    List<UnplacedSample> samples = new SamplesReader(columns, rules, notes).read(files.read(paths));
    return sites.joined(samples, notes);
  }

  private List<FieldBoundary> drawnFields() {
    return files.orNote(
        List.of(),
        file ->
            FieldJobs.withSoil(
                job, FieldsReader.read(BoundaryFile.read(file, files::add, notes), local, notes)),
        job.path("fields").flatMap(files::read));
  }

  private Ranch ranch(boolean hull, List<UnplacedSample> also) {
    if (!job.given("samples")) {
      noteMissing("samples", "laboratory readings", "--samples S" + onlySurvey());
    }
    List<FieldBoundary> drawn = drawnFields();
    List<UnplacedSample> unplaced = ownSamples(job.paths("samples"));
    List<FieldBoundary> zones = givenZones();
    Optional<InputFile> survey = job.path("survey").flatMap(files::read);
    survey.ifPresent(this::checkSurveyIsNoSamples);
    job.paths("drift").forEach(files::read);
    if ((!hull && drawn.isEmpty()) || unplaced.isEmpty()) {
      notes.stopIfProblems();
    }
    RanchSystem system = new RanchSystem(drawn, unplaced, job.word("crs"));
    RanchProjection projection = system.projection(fileName("fields"), notes);
    Placing placing = system.placing(projection, notes);
    system.noteDatumShift(notes);
    FieldFinder fields =
        new FieldFinder(
            hull
                ? HullField.around(places(unplaced, also, placing), job.name(), notes).stream()
                    .toList()
                : drawn.stream().map(f -> f.moved(projection::toMetres)).toList());
    List<Sample> samples = MatchedRows.of(inFields(unplaced, fields, placing), notes);
    List<SurveyReading> readings =
        files.orNote(List.of(), file -> SurveyReader.read(file, columns, placing, notes), survey);
    noteSurveyElsewhere(readings, fields);
    columns.noteMissing(notes);
    notes.stopIfProblems();
    return ranch(projection, fields.fields(), samples, readings)
        .withZones(zones.stream().map(z -> z.moved(projection::toMetres)).toList());
  }

  private List<FieldBoundary> givenZones() {
    return files.orNote(
        List.of(),
        file -> FieldsReader.zones(BoundaryFile.read(file, files::add, notes), local, notes),
        job.path("zones.file").flatMap(files::read));
  }

  private Ranch ranch(
      RanchProjection projection,
      List<FieldBoundary> fields,
      List<Sample> samples,
      List<SurveyReading> survey) {
    return new Ranch(
        job.word("ranch"), projection, fields, samples, survey, files.hashes(), notes.findings());
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

  private static List<PlaceM> places(
      List<UnplacedSample> unplaced, List<UnplacedSample> also, Placing placing) {
    List<UnplacedSample> all = new ArrayList<>(unplaced);
    all.addAll(also);
    return all.stream().flatMap(each -> place(each, placing).stream()).toList();
  }

  private static Optional<PlaceM> place(UnplacedSample each, Placing placing) {
    return each.spot().filter(placing::knows).flatMap(placing::place);
  }

  private List<Sample> inFields(
      List<UnplacedSample> unplaced, FieldFinder fields, Placing placing) {
    if (fields.fields().isEmpty()) {
      return List.of();
    }
    Overlaps.noteIn(notes, fields.fields());
    fields.fields().forEach(this::noteUnusualSize);
    List<Sample> samples = new SamplesInFields(placing, fields, notes).samples(unplaced);
    if (samples.isEmpty() && !unplaced.isEmpty() && !notes.hasProblems()) {
      noteNoneInside(unplaced, fields, placing);
    }
    return samples;
  }

  private void noteUnusualSize(FieldBoundary field) {
    double ha = field.shapeM().getArea() / 1e4;
    if (!local && (ha < LEAST_HA || ha > MOST_HA)) {
      notes.finding(
          Code.FIELD_SIZE,
          Place.field(field.name()),
          PlainText.number(ha) + " ha of ground",
          "kept; check the boundary and its coordinate system");
    }
  }

  private void noteNoneInside(List<UnplacedSample> unplaced, FieldFinder fields, Placing placing) {
    List<Spot> spots = unplaced.stream().flatMap(each -> each.spot().stream()).toList();
    notes.problem(
        job.paths("samples").stream()
            .map(path -> String.valueOf(path.getFileName()))
            .collect(Collectors.joining(", ")),
        spots.isEmpty()
            ? "no row with coordinates" + badCoordinate()
            : "no site in or near any field",
        "sites inside the fields",
        spots.isEmpty()
            ? "Give lon and lat columns, or a file of coordinates by id: sites: FILE."
            : CoordinateSlip.of(spots, placing, fields)
                .map(CoordinateSlip::remedy)
                .orElse(
                    "Check that samples and fields are of the same ranch and their crs is right."));
  }

  private String badCoordinate() {
    return notes.findings().stream()
        .filter(f -> f.code() == Code.BAD_COORDINATE)
        .map(f -> " (" + f.where() + ": " + f.found() + ")")
        .findFirst()
        .orElse("");
  }

  private void noteSurveyElsewhere(List<SurveyReading> survey, FieldFinder fields) {
    if (!survey.isEmpty() && survey.stream().noneMatch(r -> fields.find(r.place()).isPresent())) {
      notes.finding(
          Code.SURVEY_ELSEWHERE,
          Place.file(fileName("survey")),
          "no reading in or near any field",
          "not used for the map; check its coordinates and crs");
    }
  }

  private String fileName(String key) {
    return job.path(key).map(path -> String.valueOf(path.getFileName())).orElse(key);
  }

  private Ranch table(List<Path> tables) {
    List<UnplacedSample> unplaced = ownSamples(tables);
    columns.noteMissing(notes);
    notes.stopIfProblems();
    RanchSystem system = new RanchSystem(List.of(), unplaced, job.word("crs"));
    RanchProjection projection = system.projection("", notes);
    Placing placing = system.placing(projection, notes);
    List<Sample> samples =
        unplaced.stream()
            .map(each -> each.sample().withField(each.namedField(), place(each, placing)))
            .toList();
    return ranch(projection, List.of(), MatchedRows.of(samples, notes), List.of());
  }

  private Points points(Path points, Ranch ranch) {
    List<UnplacedSample> unplaced = samples(List.of(points));
    notes.stopIfProblems();
    RanchSystem system = new RanchSystem(ranch.fields(), unplaced, job.word("crs"));
    Placing placing = system.placing(ranch.projection(), notes);
    List<Sample> samples =
        MatchedRows.of(
            new SamplesInFields(placing, new FieldFinder(ranch.fields()), notes).samples(unplaced),
            notes);
    notes.stopIfProblems();
    List<Finding> findings =
        notes.findings().stream().filter(f -> f.code() != Code.FIELD_WITHOUT_SITES).toList();
    int sites = (int) unplaced.stream().map(each -> each.sample().id()).distinct().count();
    return new Points(samples, sites, findings);
  }
}
