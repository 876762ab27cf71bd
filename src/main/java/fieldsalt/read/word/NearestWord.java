package fieldsalt.read.word;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** The known word that a mistyped one most likely meant. */
public final class NearestWord {
  private NearestWord() {}

  /** The word with the fewest letters to change, swap, add or drop; empty if none is known. */
  public static Optional<String> of(String typed, Collection<String> known) {
    return known.stream()
        .min(
            Comparator.comparingInt((String k) -> distance(typed, k))
                .thenComparing(k -> !isWithin(plain(typed), plain(k))));
  }

  /** Edit distance with swaps of neighbours, blind to case and to the kind of dash. */
  public static int distance(String a, String b) {
    String left = plain(a);
    String right = plain(b);
    int[][] d = new int[left.length() + 1][right.length() + 1];
    for (int i = 0; i <= left.length(); i++) {
      for (int j = 0; j <= right.length(); j++) {
        d[i][j] = Math.min(i, j) == 0 ? Math.max(i, j) : step(left, right, i, j, d);
      }
    }
    return d[left.length()][right.length()];
  }

  /** Whether a word is another one of which only some letters were left out. */
  private static boolean isWithin(String part, String whole) {
    int at = 0;
    for (int i = 0; i < whole.length() && at < part.length(); i++) {
      at += whole.charAt(i) == part.charAt(at) ? 1 : 0;
    }
    return at == part.length();
  }

  private static int step(String a, String b, int i, int j, int[][] d) {
    int swap = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
    int best = Math.min(d[i - 1][j - 1] + swap, Math.min(d[i - 1][j], d[i][j - 1]) + 1);
    boolean crossed =
        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
    return crossed ? Math.min(best, d[i - 2][j - 2] + 1) : best;
  }

  private static String plain(String text) {
    String cut = text.length() > 60 ? text.substring(0, 60) : text;
    return cut.toLowerCase(Locale.ROOT).replaceAll("[_\\s-]+", "-");
  }
}
