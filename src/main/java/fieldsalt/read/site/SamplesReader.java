package fieldsalt.read.site;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.read.file.InputFile;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.LaboratorySheet;
import fieldsalt.read.sample.ReadingRules;
import fieldsalt.read.sample.Spot;
import fieldsalt.read.sample.UnplacedSample;
import fieldsalt.read.table.Columns;
import fieldsalt.read.table.Sheet;
import fieldsalt.read.table.SheetLayout;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** All samples files of a job to rows; identical rows once; places from the file of sites. */
public final class SamplesReader {
  private static final SourceRow NOWHERE = new SourceRow("", 0);

  private final JobDocument job;
  private final ReadingRules rules;
  private final Set<String> mapped;
  private final Notes notes;

  public SamplesReader(
      JobDocument job, SiteList sites, boolean oneFile, Set<String> mapped, Notes notes) {
    this.job = job;
    this.rules = new ReadingRules(job, sites.keys(), oneFile);
    this.mapped = mapped;
    this.notes = notes;
  }

  /** The rows of some files, in their order; a file that cannot be read is a problem noted. */
  public List<UnplacedSample> read(List<InputFile> files) {
    List<UnplacedSample> rows = new ArrayList<>();
    for (InputFile file : files) {
      try {
        rows.addAll(rows(file));
      } catch (InputProblem e) {
        notes.problem(e);
      }
    }
    return withoutTwins(rows);
  }

  private List<UnplacedSample> rows(InputFile file) {
    Sheet sheet = SheetLayout.read(file, SitesReader.allHeaders(job), notes);
    Columns columns = Columns.of(sheet, rules.mapping(), notes);
    mapped.addAll(columns.mappedHeaders());
    boolean before = notes.hasProblems();
    List<UnplacedSample> rows = LaboratorySheet.rows(sheet, columns, rules, notes);
    if (rows.isEmpty() && notes.hasProblems() == before) {
      nothingUsable(sheet, file);
    }
    return rows;
  }

  private void nothingUsable(Sheet sheet, InputFile file) {
    String why =
        notes.findings().stream()
            .filter(f -> f.place().isIn(file.name()))
            .map(f -> f.where() + ": " + f.found() + ", " + f.done())
            .limit(5)
            .reduce((a, b) -> a + "; " + b)
            .map(text -> " (" + text + ")")
            .orElse("");
    notes.problem(
        file.name(),
        sheet.lines().isEmpty() ? "a header and no row below it" : "no usable reading" + why,
        "at least one row with a reading",
        remedy(sheet, file));
  }

  /** The shortest way out of what made all rows useless. */
  private String remedy(Sheet sheet, InputFile file) {
    Set<Code> codes =
        notes.findings().stream()
            .filter(f -> f.place().isIn(file.name()))
            .map(Finding::code)
            .collect(Collectors.toSet());
    if (sheet.lines().isEmpty()) {
      return "Export the table again with its rows.";
    }
    if (codes.contains(Code.UNIT_SLIP) || codes.contains(Code.UNIT_MISSING)) {
      return "Say the unit once for all rows: defaults: {unit: ...} in the job, e.g. uS/cm; it also"
          + " confirms suspected ones.";
    }
    if (codes.contains(Code.UNIT_UNKNOWN)) {
      return "Write a unit of that list into the unit column of the file, for all rows at once.";
    }
    if (codes.contains(Code.METHOD_REFUSED)) {
      return "Give readings of a saturated paste or of 1:1, 1:2, 1:2.5 or 1:5 by mass, or mend the"
          + " methods in the file.";
    }
    return "Mend the rows named, or name the columns in the job (columns:).";
  }

  private List<UnplacedSample> withoutTwins(List<UnplacedSample> rows) {
    Set<UnplacedSample> seen = new HashSet<>();
    List<UnplacedSample> kept = new ArrayList<>();
    for (UnplacedSample row : rows) {
      if (seen.add(
          new UnplacedSample(row.sample().withSource(NOWHERE), row.spot(), row.fieldSaid()))) {
        kept.add(row);
      } else {
        notes.row(
            Code.DUPLICATE_ROW, row.sample().source(), "the same row a second time", "left out");
      }
    }
    return kept;
  }

  /** Rows without a place get that of their id; ids without one are told, both ways. */
  public List<UnplacedSample> joined(List<UnplacedSample> rows, SiteList sites) {
    List<UnplacedSample> placed = new ArrayList<>();
    Set<String> without = new TreeSet<>();
    for (UnplacedSample row : rows) {
      Optional<Spot> spot = row.spot().or(() -> sites.spot(row.sample().id()));
      if (row.spot().isPresent()) {
        sites.spot(row.sample().id());
      }
      if (spot.isEmpty() && !row.sample().composite()) {
        without.add(row.sample().id());
      }
      placed.add(row.at(spot));
    }
    sites.tellUnmatched(List.copyOf(without), notes);
    return placed;
  }
}
