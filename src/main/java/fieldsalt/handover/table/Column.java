package fieldsalt.handover.table;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * A property of a layer as a column of one kind.
 *
 * @param property its name in the features
 * @param values one a feature, null where it has none; all of the kind's own type
 */
record Column(String property, Kind kind, List<Object> values) {
  /** What a column holds. */
  enum Kind {
    TEXT,
    REAL,
    INTEGER,
    TRUTH
  }

  /** The columns of a layer, in the order in which its features first name them. */
  static List<Column> of(List<Feature> features) {
    Set<String> names = new LinkedHashSet<>();
    features.forEach(feature -> names.addAll(feature.properties().keySet()));
    return names.stream().map(name -> of(name, features)).toList();
  }

  private static Column of(String name, List<Feature> features) {
    List<Object> plain = new ArrayList<>();
    features.forEach(feature -> plain.add(Values.plain(feature.properties().get(name))));
    boolean nothing = plain.stream().allMatch(value -> value == null);
    Kind kind = nothing ? kindByName(name) : kind(plain);
    plain.replaceAll(value -> as(kind, value));
    return new Column(name, kind, plain);
  }

  /** A column without a value is a number if its name ends in a unit or a bound. */
  private static Kind kindByName(String name) {
    return name.matches(".*_(pct|ha|mm|m|ece|chance|low|high)") ? Kind.REAL : Kind.TEXT;
  }

  private static Kind kind(List<Object> values) {
    List<Object> known = values.stream().filter(v -> v != null).toList();
    if (known.stream().anyMatch(v -> v instanceof String)) {
      return Kind.TEXT;
    }
    long truths = known.stream().filter(v -> v instanceof Boolean).count();
    if (truths > 0) {
      return truths == known.size() ? Kind.TRUTH : Kind.TEXT;
    }
    return known.stream().allMatch(v -> v instanceof Long) ? Kind.INTEGER : Kind.REAL;
  }

  private static Object as(Kind kind, Object value) {
    if (value == null) {
      return null;
    }
    return switch (kind) {
      case TEXT -> value.toString();
      case REAL -> ((Number) value).doubleValue();
      case INTEGER, TRUTH -> value;
    };
  }
}
