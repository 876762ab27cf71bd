package fieldsalt.plan.setting;

import java.util.OptionalDouble;

/**
 * Whether water can leave below the root zone.
 *
 * @param waterTableCm depth to the water table; empty where unknown
 */
public record GroundSettings(Drainage drainage, OptionalDouble waterTableCm) {
  /** A water table nearer than this forbids leaching until drainage is proved, cm. */
  static final double SHALLOW_TABLE_CM = 150;

  /** What is known of the drainage. */
  public enum Drainage {
    GOOD,
    POOR,
    UNKNOWN
  }

  public static GroundSettings defaults() {
    return new GroundSettings(Drainage.UNKNOWN, OptionalDouble.empty());
  }

  public boolean hasShallowTable() {
    return waterTableCm.isPresent() && waterTableCm.getAsDouble() < SHALLOW_TABLE_CM;
  }

  /** Whether leaching may start: drainage said to be good and no water table near. */
  public boolean isProved() {
    return drainage == Drainage.GOOD && !hasShallowTable();
  }
}
