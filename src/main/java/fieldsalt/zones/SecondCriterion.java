package fieldsalt.zones;

import java.util.List;

/**
 * A second property that cuts zones, such as sodicity: zones are then combinations of both classes.
 *
 * @param name for findings, e.g. {@code sodicity}
 * @param values one for each cell of the surface's grid, same order; NaN where unknown
 * @param breaks ascending, in the values' unit; a value equal to a break belongs to the upper class
 * @param labels one more than breaks; an empty label adds nothing to a zone's label
 */
public record SecondCriterion(
    String name, float[] values, List<Double> breaks, List<String> labels) {
  public SecondCriterion {
    breaks = List.copyOf(breaks);
    labels = List.copyOf(labels);
    if (labels.size() != breaks.size() + 1) {
      throw new IllegalArgumentException(
          "one label more than breaks is needed, was " + labels.size() + " and " + breaks.size());
    }
  }
}
