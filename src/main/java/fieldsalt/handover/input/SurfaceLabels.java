package fieldsalt.handover.input;

/**
 * What the mapped numbers are called.
 *
 * @param property for people, e.g. {@code ECe}
 * @param unit e.g. {@code dS/m}; may be empty
 * @param logScale whether the error is that of the natural logarithm
 * @param limit what the chance is to be above, e.g. {@code the threshold of alfalfa, 2.0 dS/m}
 */
public record SurfaceLabels(String property, String unit, boolean logScale, String limit) {
  /** ECe in dS/m, mapped on the log scale. */
  public static SurfaceLabels ece(String limit) {
    return new SurfaceLabels("ECe", "dS/m", true, limit);
  }
}
