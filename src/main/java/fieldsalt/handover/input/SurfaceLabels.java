package fieldsalt.handover.input;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.classes.ClassScheme;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

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

  /**
   * Of what was mapped.
   *
   * @param schemes whose limits the chance is of, by field
   */
  public static SurfaceLabels of(SiteReadings readings, Map<String, ClassScheme> schemes) {
    String limits =
        schemes.entrySet().stream()
            .map(
                e ->
                    String.format(
                        Locale.ROOT, "%s %.1f dS/m", e.getKey(), e.getValue().limitDsPerM()))
            .collect(Collectors.joining("; "));
    return readings.isEce()
        ? ece(limits)
        : new SurfaceLabels(
            readings.property(), readings.unit(), readings.scale() == Scale.LOG, limits);
  }
}
