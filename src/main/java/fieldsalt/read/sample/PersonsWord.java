package fieldsalt.read.sample;

import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.quantity.Method;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.word.ReadingUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The person's word on readings: those left out ({@code leave-out}) and those confirmed ({@code
 * confirm}). A reading is named by its row, with its file where there are several, or by its
 * sample's id.
 */
public final class PersonsWord {
  private final JobDocument job;
  private final boolean oneFile;
  private final Set<String> confirmed;
  private final Set<String> leftOut;

  private PersonsWord(JobDocument job, boolean oneFile) {
    this.job = job;
    this.oneFile = oneFile;
    this.confirmed = Set.copyOf(job.names("confirm"));
    this.leftOut = Set.copyOf(job.texts("leave-out"));
  }

  /**
   * What a job says.
   *
   * @param oneFile whether there is one samples file, so that a row's number alone names it
   */
  public static PersonsWord of(JobDocument job, boolean oneFile) {
    return new PersonsWord(job, oneFile);
  }

  /** What a row is called in the job: its number, with its file where there are several. */
  String name(SourceRow row) {
    return oneFile ? String.valueOf(row.row()) : row.toString();
  }

  private Stream<String> names(SourceRow row, String id) {
    return Stream.of(name(row), row.toString(), id);
  }

  /** The unit that the user confirmed for one row. */
  Optional<ReadingUnit> unit(SourceRow row, String id) {
    return confirmed.isEmpty()
        ? Optional.empty()
        : names(row, id)
            .filter(confirmed::contains)
            .flatMap(name -> job.text("confirm", name).stream())
            .findFirst()
            .flatMap(ReadingUnit::of);
  }

  /** Ids of the sites of which a reading was confirmed. */
  public static Set<String> confirmedIds(JobDocument job, List<Sample> samples) {
    PersonsWord word = new PersonsWord(job, job.paths("samples").size() == 1);
    return samples.stream()
        .filter(s -> word.names(s.source(), s.id()).anyMatch(word.confirmed::contains))
        .map(Sample::id)
        .collect(Collectors.toSet());
  }

  /** The samples that stay; those left out are noted, and names that nothing has. */
  public List<UnplacedSample> kept(List<UnplacedSample> samples, Notes notes) {
    Set<String> met = new HashSet<>();
    List<UnplacedSample> kept = new ArrayList<>();
    for (UnplacedSample each : samples) {
      Sample sample = each.sample();
      List<String> names = names(sample.source(), sample.id()).toList();
      met.addAll(names);
      if (names.stream().anyMatch(leftOut::contains)) {
        notes.row(
            Code.LEFT_OUT_BY_PERSON,
            sample.source(),
            "sample '" + sample.id() + "'" + sample.method().map(PersonsWord::by).orElse(""),
            "left out, as leave-out in the job says");
      } else {
        kept.add(each);
      }
    }
    noteUnknown("confirm", confirmed, met, notes);
    noteUnknown("leave-out", leftOut, met, notes);
    if (kept.isEmpty() && !samples.isEmpty()) {
      notes.problem(
          job.name(),
          "leave-out names every reading",
          "readings to make a map of",
          "Take names out of leave-out.");
    }
    return kept;
  }

  private static void noteUnknown(String key, Set<String> names, Set<String> met, Notes notes) {
    for (String name : new TreeSet<>(names)) {
      if (!met.contains(name)) {
        notes.finding(
            Code.NAME_UNKNOWN,
            new Place.Key(key),
            "'" + name + "', which is no row and no sample",
            "it changes nothing; write the row's number or the sample's id as in the file");
      }
    }
  }

  private static String by(Method method) {
    return ", " + method.label();
  }
}
