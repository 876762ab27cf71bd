package fieldsalt.classes;

import java.util.List;

/**
 * How ECe is cut into classes in one field.
 *
 * @param name for the legend, e.g. {@code alfalfa / lucerne, yield steps} or {@code NRCS classes}
 * @param breaks ascending, dS/m; a value equal to a break belongs to the upper class
 * @param labels one more than breaks, from the lowest class up
 * @param labelsAreLimits whether the labels say the limits already
 * @param limitDsPerM what {@code p_above} is the chance to be above: the crop's threshold, or 4
 */
public record ClassScheme(
    String name,
    List<Double> breaks,
    List<String> labels,
    boolean labelsAreLimits,
    double limitDsPerM) {
  public ClassScheme {
    breaks = List.copyOf(breaks);
    labels = List.copyOf(labels);
    if (labels.size() != breaks.size() + 1) {
      throw new IllegalArgumentException(
          "one label more than breaks is needed, was " + labels.size() + " and " + breaks.size());
    }
  }

  /** Classes whose labels are names. */
  public ClassScheme(String name, List<Double> breaks, List<String> labels, double limitDsPerM) {
    this(name, breaks, labels, false, limitDsPerM);
  }

  /** The same classes with another limit, in dS/m. */
  ClassScheme withLimit(double limit) {
    return new ClassScheme(name, breaks, labels, labelsAreLimits, limit);
  }

  /** Index of the class of an ECe in dS/m. */
  public int classOf(double ece) {
    int k = 0;
    while (k < breaks.size() && ece >= breaks.get(k)) {
      k++;
    }
    return k;
  }
}
