package fieldsalt.basis.soil;

import fieldsalt.quantity.Method;
import fieldsalt.read.sample.Sample;
import java.util.Locale;

/** What the ions of a row were measured in. */
public enum IonBasis {
  PASTE,
  ONE_TO_FIVE,
  OTHER_EXTRACT,
  EXTRACTABLE,
  UNKNOWN;

  /** The row's {@code ions_method}; by default the row's own method. */
  public static IonBasis of(Sample sample) {
    String said = sample.ions().method().trim().toLowerCase(Locale.ROOT);
    if (said.isEmpty()) {
      return sample.method().map(IonBasis::ofMethod).orElse(UNKNOWN);
    }
    if (said.matches(".*(extractable|exchangeable|acetate|mehlich|olsen|nh4).*")) {
      return EXTRACTABLE;
    }
    if (said.matches(".*(paste|saturat).*")) {
      return PASTE;
    }
    return Method.of(said).map(IonBasis::ofMethod).orElse(UNKNOWN);
  }

  public static IonBasis ofMethod(Method method) {
    return switch (method) {
      case PASTE -> PASTE;
      case ONE_TO_FIVE -> ONE_TO_FIVE;
      default -> OTHER_EXTRACT;
    };
  }
}
