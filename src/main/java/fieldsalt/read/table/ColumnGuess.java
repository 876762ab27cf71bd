package fieldsalt.read.table;

import fieldsalt.quantity.Method;
import fieldsalt.read.word.HeaderText;
import fieldsalt.read.word.MethodWords;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What a header most likely holds.
 *
 * @param ours our name; {@code ec} for any reading of conductivity
 * @param stated method and reading that the header names, for {@code ec} and ions
 * @param rank 0 for the most trusted header of this name, rising
 */
record ColumnGuess(String ours, MethodWords.Stated stated, int rank) {
  private static final Pattern EC =
      Pattern.compile(
          "^(soil )?(ec|e c|ece|ec e|ecse|ec se|ecsp|electrical conductivity|elec cond|conductivity"
              + "|specific conductance|soluble salts?|sol salts?|salts|salinity|tds|total dissolved solids)"
              + "( ?\\d|\\b)");
  private static final Pattern NOT_EC =
      Pattern.compile("\\b(water|irrigation|unit|units|method|class|rating|date|depth|range)\\b");
  private static final Pattern PASTE_EC = Pattern.compile("^(soil )?(ece|ec e|ecse|ec se|ecsp)\\b");
  private static final List<String> MODIFIERS =
      List.of(
          " saturated paste extract",
          " saturation extract",
          " saturated paste",
          " sat paste",
          " sat extract",
          " sat ext",
          " paste extract",
          " paste",
          " extract",
          " percent",
          " in extract");

  /** The guess for a header; empty if nothing of ours is like it. */
  static Optional<ColumnGuess> of(HeaderText header) {
    Optional<String> own = ColumnNames.ofOurs(header.raw().strip());
    if (own.isPresent()) {
      return own.map(ColumnGuess::ofOurs);
    }
    Optional<ColumnGuess> named = named(header.name());
    if (named.isEmpty() && !header.whole().equals(header.name())) {
      named = named(header.whole());
    }
    return named.isPresent() ? named : ec(header).or(() -> modified(header.name()));
  }

  private static ColumnGuess ofOurs(String ours) {
    return ours.startsWith("ec_")
        ? new ColumnGuess("ec", MethodWords.parse(ours.substring(3)), 0)
        : new ColumnGuess(ours, MethodWords.parse(""), 0);
  }

  private static Optional<ColumnGuess> named(String name) {
    return ColumnNames.meant(name).stream()
        .filter(ours -> !ours.equals("eca_ms_m"))
        .findFirst()
        .map(ours -> new ColumnGuess(ours, MethodWords.parse(""), ColumnNames.rank(ours, name)));
  }

  private static Optional<ColumnGuess> ec(HeaderText header) {
    String name = header.name();
    if (!EC.matcher(name).find() || NOT_EC.matcher(name).find()) {
      return Optional.empty();
    }
    MethodWords.Stated stated = MethodWords.parse(header.raw());
    boolean paste = stated.method().isEmpty() && PASTE_EC.matcher(name).find();
    MethodWords.Stated whole =
        paste
            ? new MethodWords.Stated(
                Optional.of(Method.PASTE), fieldsalt.quantity.ReadingKind.EXTRACT, "")
            : stated;
    return Optional.of(new ColumnGuess("ec", whole, 0));
  }

  private static Optional<ColumnGuess> modified(String name) {
    for (String modifier : MODIFIERS) {
      if (name.toLowerCase(Locale.ROOT).endsWith(modifier)) {
        String base = name.substring(0, name.length() - modifier.length()).strip();
        return named(base).map(g -> new ColumnGuess(g.ours(), MethodWords.parse(modifier), 50));
      }
    }
    return Optional.empty();
  }
}
