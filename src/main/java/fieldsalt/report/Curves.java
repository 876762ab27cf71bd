package fieldsalt.report;

import fieldsalt.surface.Exponential;
import fieldsalt.surface.Matern32;
import fieldsalt.surface.Spherical;
import fieldsalt.surface.SurfaceReport.FittedVariogram;
import fieldsalt.surface.Variogram;

/** The fitted model drawn as a curve. */
final class Curves {
  private Curves() {}

  /** Semivariance of the true ln ECe at a distance: micro-scale part plus the structured part. */
  static double semivariance(FittedVariogram v, double distanceM) {
    return v.microScale() + v.partialSill() * (1 - correlation(v).rho(distanceM));
  }

  private static Variogram correlation(FittedVariogram v) {
    return switch (v.model()) {
      case "spherical" -> new Spherical(v.rangeM());
      case "matern 3/2" -> new Matern32(v.rangeM());
      default -> new Exponential(v.rangeM());
    };
  }
}
