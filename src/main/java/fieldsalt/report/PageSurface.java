package fieldsalt.report;

import fieldsalt.surface.SurfaceMap;
import fieldsalt.surface.SurfaceReport;
import java.util.List;

/**
 * The surface and how far it can be trusted.
 *
 * @param bins the sample variogram of the converted readings; may be empty
 * @param accuracy share of sites inside their interval, by the chance it was made for
 * @param next what to measure next, the most useful first
 */
public record PageSurface(
    SurfaceReport report,
    List<SurfaceMap> maps,
    List<VariogramBin> bins,
    List<AccuracyPoint> accuracy,
    List<NextMeasurement> next) {
  public PageSurface {
    maps = List.copyOf(maps);
    bins = List.copyOf(bins);
    accuracy = List.copyOf(accuracy);
    next = List.copyOf(next);
  }

  /** Mean half squared difference of ln ECe at a distance. */
  public record VariogramBin(double distanceM, double semivariance, int pairs) {}

  /** An interval made for a chance, and the share of sites that it held. */
  public record AccuracyPoint(double chance, double share) {}

  /**
   * A measurement not yet made.
   *
   * @param what e.g. {@code saturated paste of the stored sample N07}
   * @param why what it tells most about
   * @param ranchErrorPct standard error of the ranch's mean ECe after it and those before, percent
   * @param worstZoneErrorPct the same of the zone known worst
   */
  public record NextMeasurement(
      String what, String why, double ranchErrorPct, double worstZoneErrorPct) {}
}
