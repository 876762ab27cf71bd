package fieldsalt.read.word;

import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import java.text.Normalizer;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Laboratories' words for how the soil was wetted and what the probe was in. */
public final class MethodWords {
  private static final Pattern RATIO =
      Pattern.compile("(?<![\\d.])1\\s*(?::|to|/|-|_|\\s|in)\\s*(\\d+(?:[.,]\\d+)?)(?![\\d.])");
  private static final Pattern PASTE =
      Pattern.compile(
          "paste|saturat|\\bsat\\b\\.?|\\bece\\b|\\becse\\b|\\bse\\b|^sp$|\\bece\\d*\\b|\\bec ?e\\b|\\bec ?se\\b");
  private static final Pattern VOLUME = Pattern.compile("\\bv\\s*/?:?\\s*v\\b|by vol|volume");
  private static final Pattern MEDIA =
      Pattern.compile("\\bmedia\\b|potting|\\bpour|\\bsme\\b|substrate|squeeze");
  private static final Pattern SLURRY =
      Pattern.compile("slurry|suspension|in[- ]?situ|probe|\\bin paste\\b|direct");
  private static final Pattern EXTRACT =
      Pattern.compile("extract|filtrate|supernatant|leachate|vacuum|settled");

  private MethodWords() {}

  /**
   * What a text says.
   *
   * @param method empty if it names no method that can be used
   * @param reason why a named method is refused, or empty text
   */
  public record Stated(Optional<Method> method, ReadingKind reading, String reason) {}

  /** What a cell, a header or a job value says about method and reading. */
  public static Stated parse(String text) {
    String plain =
        Normalizer.normalize(text, Normalizer.Form.NFKC)
            .toLowerCase(Locale.ROOT)
            .replace('\u2236', ':')
            .replace('_', ' ')
            .strip();
    if (MEDIA.matcher(plain).find()) {
      return refused("an extract of growing media has no relation to field soil");
    }
    if (VOLUME.matcher(plain).find()) {
      return refused(
          "a ratio by volume depends on how the soil was packed; give the ratio by mass");
    }
    Matcher ratio = RATIO.matcher(plain);
    if (ratio.find()) {
      return ofRatio(ratio.group(1).replace(',', '.'), reading(plain));
    }
    if (PASTE.matcher(plain).find()) {
      return new Stated(Optional.of(Method.PASTE), pasteReading(plain), "");
    }
    return refused("");
  }

  /** Slurry or extract, if the text says so. */
  public static ReadingKind reading(String plain) {
    String lower = plain.toLowerCase(Locale.ROOT);
    if (EXTRACT.matcher(lower).find()) {
      return ReadingKind.EXTRACT;
    }
    return SLURRY.matcher(lower).find() ? ReadingKind.SLURRY : ReadingKind.UNKNOWN;
  }

  private static ReadingKind pasteReading(String plain) {
    ReadingKind kind = reading(plain);
    return kind == ReadingKind.SLURRY ? kind : ReadingKind.EXTRACT;
  }

  private static Stated ofRatio(String water, ReadingKind reading) {
    Optional<Method> method =
        switch (water) {
          case "1", "1.0" -> Optional.of(Method.ONE_TO_ONE);
          case "2", "2.0" -> Optional.of(Method.ONE_TO_TWO);
          case "2.5" -> Optional.of(Method.ONE_TO_TWO_AND_HALF);
          case "5", "5.0" -> Optional.of(Method.ONE_TO_FIVE);
          default -> Optional.empty();
        };
    return method.isPresent()
        ? new Stated(method, reading, "")
        : refused("there is no relation for a 1:" + water + " extract");
  }

  private static Stated refused(String reason) {
    return new Stated(Optional.empty(), ReadingKind.UNKNOWN, reason);
  }
}
