package fieldsalt.read.site;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.read.file.InputFile;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.sample.LaboratorySheet;
import fieldsalt.read.sample.ReadingRules;
import fieldsalt.read.sample.Sample;
import fieldsalt.read.sample.UnplacedSample;
import fieldsalt.read.table.Sheet;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** All samples files of a job to samples, identical rows once. */
public final class SamplesReader {
  private static final SourceRow NOWHERE = new SourceRow("", 0);

  private final JobColumns columns;
  private final ReadingRules rules;
  private final Notes notes;

  public SamplesReader(JobColumns columns, ReadingRules rules, Notes notes) {
    this.columns = columns;
    this.rules = rules;
    this.notes = notes;
  }

  /** The samples of some files, in their order; a file that cannot be read is a problem noted. */
  public List<UnplacedSample> read(List<InputFile> files) {
    List<UnplacedSample> samples = new ArrayList<>();
    for (InputFile file : files) {
      try {
        samples.addAll(samples(file));
      } catch (InputProblem e) {
        notes.problem(e);
      }
    }
    return withoutTwins(samples);
  }

  private List<UnplacedSample> samples(InputFile file) {
    Sheet sheet = columns.sheet(file, notes);
    boolean before = notes.hasProblems();
    List<UnplacedSample> samples =
        LaboratorySheet.samples(columns.cells(sheet, notes, notes), rules, notes);
    if (samples.isEmpty() && notes.hasProblems() == before) {
      noteNothingUsable(sheet);
    }
    return samples;
  }

  private void noteNothingUsable(Sheet sheet) {
    List<Finding> own =
        notes.findings().stream().filter(f -> f.place().isIn(sheet.file())).toList();
    String why =
        own.stream()
            .map(f -> f.where() + ": " + f.found() + ", " + f.done())
            .limit(5)
            .collect(Collectors.joining("; "));
    notes.problem(
        sheet.file(),
        sheet.rows().isEmpty()
            ? "a header and no row below it"
            : "no usable reading" + (why.isEmpty() ? "" : " (" + why + ")"),
        "at least one row with a reading",
        remedy(sheet, own.stream().map(Finding::code).collect(Collectors.toSet())));
  }

  /** The shortest remedy for what made all rows useless. */
  private static String remedy(Sheet sheet, Set<Code> codes) {
    if (sheet.rows().isEmpty()) {
      return "Export the table again with its rows.";
    }
    if (codes.contains(Code.UNIT_SLIP) || codes.contains(Code.UNIT_MISSING)) {
      return "Give the unit once for all rows: defaults: {unit: ...} in the job, e.g. uS/cm; that also"
          + " confirms suspected units.";
    }
    if (codes.contains(Code.UNIT_UNKNOWN)) {
      return "Write one of those units into the unit column of the file, for all rows.";
    }
    if (codes.contains(Code.METHOD_REFUSED)) {
      return "Give readings of a saturated paste or of 1:1, 1:2, 1:2.5 or 1:5 by mass, or correct"
          + " the methods in the file.";
    }
    return "Correct the rows named above, or name the columns in the job (columns:).";
  }

  private List<UnplacedSample> withoutTwins(List<UnplacedSample> samples) {
    Set<UnplacedSample> seen = new HashSet<>();
    List<UnplacedSample> kept = new ArrayList<>();
    for (UnplacedSample each : samples) {
      Sample sample = each.sample().withSource(NOWHERE);
      if (seen.add(new UnplacedSample(sample, each.spot(), each.namedField()))) {
        kept.add(each);
      } else {
        notes.row(
            Code.DUPLICATE_ROW, each.sample().source(), "the same row a second time", "left out");
      }
    }
    return kept;
  }
}
