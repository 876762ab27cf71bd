package fieldsalt.report.input;

import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.zones.field.ZonesAtSites;
import java.util.Optional;

/**
 * How good the zones of one field are.
 *
 * @param changedHa area whose class was changed because a piece was too small or too thin
 * @param uncertainHa area where the chance to be above the nearest limit is between 0.2 and 0.8
 * @param explainedOnMap share of the variance of the map's values that lies between zones
 * @param atSites the same against the readings
 * @param sodicity what else the zones are divided by, if anything
 */
public record PageZoning(
    String field,
    double areaHa,
    double changedHa,
    double uncertainHa,
    double explainedOnMap,
    ZonesAtSites atSites,
    Optional<BySodicity> sodicity) {

  /**
   * Sodicity as the second criterion.
   *
   * @param property {@code ESP} or {@code SAR}
   * @param limit from which it counts as sodic
   * @param depthCm of the layer, from the surface
   * @param sites of the field at which it is known
   * @param method of its surface: {@code mean}, {@code kriging}, {@code idw}
   */
  public record BySodicity(
      String property,
      String unit,
      double limit,
      double depthCm,
      int sites,
      SurfaceMethod method) {}
}
