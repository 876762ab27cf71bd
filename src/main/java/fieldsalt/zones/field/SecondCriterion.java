package fieldsalt.zones.field;

import fieldsalt.classes.ClassScheme;
import java.util.List;

/**
 * A second property that cuts the zones of a field, such as sodicity: its zones are then
 * combinations of both classes.
 *
 * @param name for people, e.g. {@code sodicity}
 * @param values one for each cell of the field's map, same order; NaN where unknown
 * @param chance to be at or above the highest break, one for each cell, 0 to 1; empty if not known
 * @param breaks ascending, in the values' unit; a value equal to a break belongs to the upper class
 * @param labels one more than breaks, all different; an empty one adds nothing to a zone's label
 */
public record SecondCriterion(
    String name, float[] values, float[] chance, List<Double> breaks, List<String> labels) {
  public SecondCriterion {
    breaks = List.copyOf(breaks);
    labels = List.copyOf(labels);
    if (labels.size() != breaks.size() + 1 || labels.stream().distinct().count() < labels.size()) {
      throw new IllegalArgumentException(
          "different labels, one more than breaks, are needed, was " + labels + " and " + breaks);
    }
    if (chance.length != 0 && chance.length != values.length) {
      throw new IllegalArgumentException(
          "a chance for each value is needed, was " + chance.length + " for " + values.length);
    }
  }

  /** Without chances. */
  public SecondCriterion(String name, float[] values, List<Double> breaks, List<String> labels) {
    this(name, values, new float[0], breaks, labels);
  }

  /** What a zone of both classes is called. */
  public String label(String first, int klass) {
    return labels.get(klass).isEmpty() ? first : first + ", " + labels.get(klass);
  }

  /**
   * Index of the class that a zone has by this criterion.
   *
   * @param scheme of the zone's field
   */
  public int classOf(Zone zone, ClassScheme scheme) {
    String first = scheme.labels().get(zone.klass());
    for (int k = 0; k < labels.size(); k++) {
      if (label(first, k).equals(zone.label())) {
        return k;
      }
    }
    throw new IllegalArgumentException("not a zone by " + name + ": " + zone.label());
  }
}
