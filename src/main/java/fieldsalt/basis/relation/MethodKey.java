package fieldsalt.basis.relation;

import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;

/**
 * Method and kind of reading as one thing that has a factor. At 1:5 the settled suspension and the
 * extract are one; a paste of which nobody said otherwise was extracted.
 */
public record MethodKey(Method method, ReadingKind kind) implements Comparable<MethodKey> {

  /** The key of a method as read, with the kinds that do not differ made one. */
  public static MethodKey of(Method method, ReadingKind kind) {
    boolean same =
        method == Method.ONE_TO_FIVE || (method == Method.PASTE && kind == ReadingKind.UNKNOWN);
    return new MethodKey(method, same ? ReadingKind.EXTRACT : kind);
  }

  /** Whether this is the basis itself: the extract of the saturated paste. */
  public boolean isBasis() {
    return method == Method.PASTE && kind == ReadingKind.EXTRACT;
  }

  /**
   * For people: {@code 1:5}, {@code 1:1 extract}, {@code 1:1 slurry}, {@code 1:1 (kind not said)}.
   */
  public String label() {
    if (method == Method.ONE_TO_FIVE || isBasis()) {
      return method.label();
    }
    return switch (kind) {
      case EXTRACT -> method.label() + " extract";
      case SLURRY -> method.label() + " slurry";
      case UNKNOWN -> method.label() + " (kind not said)";
    };
  }

  @Override
  public int compareTo(MethodKey other) {
    int byMethod = method.compareTo(other.method);
    return byMethod != 0 ? byMethod : kind.compareTo(other.kind);
  }
}
