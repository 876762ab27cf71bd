package fieldsalt.plan.draw;

import java.util.EnumMap;
import java.util.Map;

/**
 * Where the scores of a ranch's futures come from. What fields share is drawn once for the ranch,
 * each kind by itself; the rest field by field, from the field's name: a field has the same futures
 * whatever the order of the fields, and is forgotten once it is planned.
 */
public final class Futures {
  private final long seed;
  private final Map<Kind, double[][]> drawn = new EnumMap<>(Kind.class);

  /** What fields have in common. */
  public enum Kind {
    SALT,
    SALT_TO_RECLAIM,
    ESP,
    SAR,
    CEC,
    BULK_DENSITY,
    /** Of ESP worked out from SAR. */
    ESR_REGRESSION,
    USUAL_CEC,
    USUAL_BULK_DENSITY,
    LEACHING_COEFFICIENT,
    LEACHING_EFFICIENCY,
    /** In the root zone at field capacity. */
    WATER_HELD
  }

  public Futures(long seed) {
    this.seed = seed;
  }

  /** Standard normal scores of effects that all fields share: always the same for one kind. */
  public synchronized double[][] shared(Kind kind, int effects) {
    double[][] known = drawn.get(kind);
    if (known == null || known.length < effects) {
      known = draws(kind.name()).standard(effects);
      drawn.put(kind, known);
    }
    return known;
  }

  /** The same of one effect. */
  public double[] shared(Kind kind) {
    return shared(kind, 1)[0];
  }

  /** The draws of one field. */
  public Draws field(String name) {
    return draws("field " + name);
  }

  private Draws draws(String name) {
    return new Draws(seed + 0x9E3779B97F4A7C15L * name.hashCode());
  }
}
