package fieldsalt.basis;

import fieldsalt.finding.Finding;
import fieldsalt.read.Sample;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Laboratory names that are none: where a sheet has more than forty of them, the column holds
 * sample numbers or the like, and those that the job does not name are taken as one laboratory.
 */
final class Laboratories {
  private static final int MOST = 40;

  private final Set<String> known;
  private final long names;

  Laboratories(List<Sample> samples, Set<String> known) {
    this.known = known;
    this.names = samples.stream().map(Sample::laboratory).distinct().count();
  }

  private boolean tooMany() {
    return names > MOST;
  }

  Sample named(Sample sample) {
    return tooMany() && !known.contains(sample.laboratory()) ? sample.withLaboratory("") : sample;
  }

  List<Finding> findings() {
    return tooMany()
        ? List.of(
            new Finding(
                "many-laboratories",
                "column lab",
                names + " different names",
                "taken as one laboratory, for they look like sample numbers; name the laboratories"
                    + " in the job if they are such: "
                    + known.stream().sorted().collect(Collectors.joining(", ", "now [", "]"))))
        : List.of();
  }
}
