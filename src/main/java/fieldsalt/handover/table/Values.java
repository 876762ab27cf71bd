package fieldsalt.handover.table;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Property values brought to the few kinds that every format holds. */
final class Values {
  private Values() {}

  /** Null, Boolean, Long, Double (finite) or String. */
  static Object plain(Object value) {
    if (value instanceof Optional<?> optional) {
      return plain(optional.orElse(null));
    }
    if (value instanceof OptionalDouble optional) {
      return optional.isPresent() ? plain(optional.getAsDouble()) : null;
    }
    if (value instanceof OptionalInt optional) {
      return optional.isPresent() ? (Object) (long) optional.getAsInt() : null;
    }
    if (value == null || value instanceof Boolean || value instanceof Long) {
      return value;
    }
    if (value instanceof Double || value instanceof Float) {
      double number = ((Number) value).doubleValue();
      return Double.isFinite(number) ? (Object) number : null;
    }
    return value instanceof Number number ? (Object) number.longValue() : value.toString();
  }
}
