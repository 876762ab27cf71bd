package fieldsalt.report.input;

import fieldsalt.zones.field.Zone;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A zone with its figures and what to do there.
 *
 * @param low 5 % quantile of its mean ECe, dS/m
 * @param mean of ECe over the zone, dS/m
 * @param high 95 % quantile of its mean ECe, dS/m
 * @param chanceAbove mean chance of its points to be above the field's limit, 0 to 1
 * @param sodicity where zones are divided by it too
 * @param yieldPct expected relative yield of the field's crop; empty where none is published
 */
public record PageZone(
    Zone zone,
    double low,
    double mean,
    double high,
    double chanceAbove,
    Optional<PageSodicity> sodicity,
    OptionalDouble yieldPct,
    ZoneAdvice advice) {

  /** A zone by salinity alone. */
  public PageZone(
      Zone zone,
      double low,
      double mean,
      double high,
      double chanceAbove,
      OptionalDouble yieldPct,
      ZoneAdvice advice) {
    this(zone, low, mean, high, chanceAbove, Optional.empty(), yieldPct, advice);
  }
}
