package fieldsalt.report.draw;

import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.covariance.Matern32;
import fieldsalt.surface.covariance.Spherical;
import fieldsalt.surface.covariance.Variogram;
import fieldsalt.surface.fit.SurfaceReport.FittedVariogram;

/** The fitted model drawn as a curve. */
public final class Curves {
  private Curves() {}

  /** Semivariance of the true ln ECe at a distance: micro-scale part plus the structured part. */
  public static double semivariance(FittedVariogram v, double distanceM) {
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
