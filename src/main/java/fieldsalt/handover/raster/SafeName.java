package fieldsalt.handover.raster;

import java.text.Normalizer;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * File names made from names that came with the input: small Latin letters, digits and hyphens
 * only, short, none that an operating system reserves, no two alike.
 */
public final class SafeName {
  private static final int LONGEST = 40;
  private static final Set<String> RESERVED =
      Set.of("con", "prn", "aux", "nul", "com", "lpt", "clock", "conin", "conout");

  private SafeName() {}

  /**
   * A file name part for each name, in the order given.
   *
   * @param names distinct
   */
  public static Map<String, String> of(Collection<String> names) {
    Map<String, String> safe = new LinkedHashMap<>();
    Set<String> used = new HashSet<>();
    for (String name : names) {
      safe.put(name, unused(plain(name), used));
    }
    return safe;
  }

  private static String unused(String plain, Set<String> used) {
    String candidate = plain;
    for (int i = 2; !used.add(candidate); i++) {
      candidate = plain + "-" + i;
    }
    return candidate;
  }

  private static String plain(String name) {
    String letters =
        Normalizer.normalize(name, Normalizer.Form.NFD)
            .toLowerCase(Locale.ROOT)
            .replaceAll("\\p{M}+", "")
            .replaceAll("[^a-z0-9]+", "-")
            .replaceAll("^-+", "");
    String shortened = letters.length() > LONGEST ? letters.substring(0, LONGEST) : letters;
    String trimmed = shortened.replaceAll("-+$", "");
    boolean unusable = trimmed.isEmpty() || RESERVED.contains(trimmed.replaceAll("[0-9]+$", ""));
    return unusable ? ("field-" + trimmed).replaceAll("-+$", "") : trimmed;
  }
}
