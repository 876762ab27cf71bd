package fieldsalt.finding;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/** Makes one finding of those that say the same of several rows of a file. */
public final class SameText {
  private SameText() {}

  private record Key(Code code, String file, String word, String found, String done) {}

  /** The findings, those of rows with the same text joined where the first of them was. */
  public static List<Finding> joined(List<Finding> findings) {
    Map<Object, Finding> joined = new LinkedHashMap<>();
    for (Finding finding : findings) {
      if (finding.place() instanceof Place.Rows rows) {
        joined.merge(
            new Key(finding.code(), rows.file(), rows.word(), finding.found(), finding.done()),
            finding,
            SameText::both);
      } else {
        joined.put(new Object(), finding);
      }
    }
    return new ArrayList<>(joined.values());
  }

  private static Finding both(Finding first, Finding second) {
    Place.Rows a = (Place.Rows) first.place();
    Place.Rows b = (Place.Rows) second.place();
    SortedSet<Integer> rows = new TreeSet<>(a.rows());
    rows.addAll(b.rows());
    Set<String> fields = new HashSet<>(a.fields());
    fields.addAll(b.fields());
    String site = a.site().equals(b.site()) ? a.site() : "";
    Place place = new Place.Rows(a.file(), a.word(), rows, site, fields);
    return new Finding(first.code(), place, first.found(), first.done());
  }
}
