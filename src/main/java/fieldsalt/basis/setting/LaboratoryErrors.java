package fieldsalt.basis.setting;

import fieldsalt.basis.relation.MethodKey;
import fieldsalt.quantity.ReadingKind;

/**
 * Laboratory error of ln EC by kind of reading, and of the sodium properties. 1:5 after Rayment
 * &amp; Lyons 2011 (between laboratories 0.0875 in all); the others common practice.
 *
 * @param dilute extracts at 1:1 to 1:2.5
 * @param slurry probe in the slurry at 1:1 to 1:2.5
 */
public record LaboratoryErrors(
    ReadingError paste,
    ReadingError oneToFive,
    ReadingError dilute,
    ReadingError slurry,
    ReadingError sar,
    ReadingError cec) {

  public static LaboratoryErrors defaults() {
    return new LaboratoryErrors(
        new ReadingError(0.10, 0.07),
        new ReadingError(0.07, 0.05),
        new ReadingError(0.08, 0.06),
        new ReadingError(0.10, 0.08),
        new ReadingError(0.08, 0.10),
        new ReadingError(0.10, 0.10));
  }

  /** The error of one reading by a method. */
  public ReadingError of(MethodKey method) {
    return switch (method.method()) {
      case PASTE -> paste;
      case ONE_TO_FIVE -> oneToFive;
      default -> method.kind() == ReadingKind.EXTRACT ? dilute : slurry;
    };
  }
}
