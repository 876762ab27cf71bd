package fieldsalt.read.table;

import fieldsalt.quantity.Method;
import fieldsalt.read.word.MethodWords;
import fieldsalt.read.word.ResourceLines;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Our names for columns and the headers under which they come ({@code columns.csv}). */
public final class ColumnNames {
  private static final Map<String, List<String>> HEADERS = load();

  private ColumnNames() {}

  /** Every name of ours, EC's column for EC in general. */
  public static List<String> ours() {
    List<String> ours = new ArrayList<>(HEADERS.keySet());
    ours.add("ec");
    return List.copyOf(ours);
  }

  /**
   * A name of ours as it is kept: dashes and blanks as underscores, lower case, {@code ec_paste}
   * and {@code ec_1:5} for EC by a method. Empty if it is none.
   */
  public static Optional<String> ofOurs(String name) {
    String plain = name.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s-]+", "_");
    if (plain.startsWith("ec_") && MethodWords.parse(plain.substring(3)).method().isPresent()) {
      return MethodWords.parse(plain.substring(3)).method().map(Method::label).map(m -> "ec_" + m);
    }
    String known = plain.replaceAll("_mg_l$", "_meq_l");
    boolean ion = !known.equals(plain) && HEADERS.containsKey(known);
    return plain.equals("ec") || HEADERS.containsKey(plain)
        ? Optional.of(plain)
        : ion ? Optional.of(known) : Optional.empty();
  }

  /**
   * The place of a header in the list of headers of a name, the most trusted first; -1 if it is not
   * there.
   */
  public static int rank(String ours, String header) {
    return HEADERS.getOrDefault(ours, List.of()).indexOf(header);
  }

  /** Names of ours that a header may mean. */
  static List<String> meant(String header) {
    return HEADERS.entrySet().stream()
        .filter(e -> e.getValue().contains(header))
        .map(Map.Entry::getKey)
        .toList();
  }

  private static Map<String, List<String>> load() {
    Map<String, List<String>> headers = new LinkedHashMap<>();
    for (String line : ResourceLines.of("columns.csv")) {
      String[] cells = line.split(" ; ");
      headers.put(cells[0].strip(), List.of(cells[1].strip().split("\\s*\\|\\s*")));
    }
    return headers;
  }
}
