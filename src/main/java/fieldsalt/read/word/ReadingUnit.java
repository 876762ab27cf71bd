package fieldsalt.read.word;

import fieldsalt.quantity.EcUnit;
import java.text.Normalizer;
import java.util.Locale;
import java.util.Optional;

/** What a cell of EC may be in: a unit of conductivity, or dissolved solids that need a factor. */
public record ReadingUnit(Optional<EcUnit> ec) {
  static final ReadingUnit DISSOLVED_SOLIDS = new ReadingUnit(Optional.empty());

  /** The unit that a text names; empty if it names none. */
  public static Optional<ReadingUnit> of(String text) {
    String plain =
        Normalizer.normalize(text, Normalizer.Form.NFKC).toLowerCase(Locale.ROOT).replace(" ", "");
    if (plain.matches("(tds)?\\(?(ppm|mg/?l|mgl-1|mg/lit(er|re)|mg/kg)\\)?(tds)?")) {
      return Optional.of(DISSOLVED_SOLIDS);
    }
    return EcUnit.of(text).map(u -> new ReadingUnit(Optional.of(u)));
  }

  public boolean isDissolvedSolids() {
    return ec.isEmpty();
  }

  public String label() {
    return ec.map(EcUnit::label).orElse("ppm");
  }
}
