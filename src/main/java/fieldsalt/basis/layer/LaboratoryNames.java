package fieldsalt.basis.layer;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.read.sample.Sample;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The laboratories of a sheet: spellings that differ in case or blanks are one. Names that are
 * none, where a sheet has more than forty of them (the column holds sample numbers or the like):
 * those that the job does not name are taken as one laboratory.
 */
final class LaboratoryNames {
  private static final int MOST = 40;

  private final Set<String> known = new TreeSet<>();
  private final Map<String, String> names = new TreeMap<>();

  LaboratoryNames(List<Sample> samples, Set<String> known) {
    known.forEach(name -> this.known.add(plain(name)));
    samples.forEach(
        s -> names.merge(plain(s.laboratory()), s.laboratory().strip(), LaboratoryNames::first));
  }

  private static String plain(String name) {
    return name.strip().toLowerCase(Locale.ROOT);
  }

  private static String first(String a, String b) {
    return a.compareTo(b) <= 0 ? a : b;
  }

  private boolean tooMany() {
    return names.size() > MOST;
  }

  Sample named(Sample sample) {
    String plain = plain(sample.laboratory());
    String name = tooMany() && !known.contains(plain) ? "" : names.get(plain);
    return name.equals(sample.laboratory()) ? sample : sample.withLaboratory(name);
  }

  List<Finding> findings() {
    return tooMany()
        ? List.of(
            new Finding(
                Code.MANY_LABORATORIES,
                new Place.Source("column lab"),
                names.size() + " different names",
                "taken as one laboratory, for they look like sample numbers; name the laboratories"
                    + " in the job if they are such"))
        : List.of();
  }
}
