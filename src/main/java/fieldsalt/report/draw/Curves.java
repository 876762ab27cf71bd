package fieldsalt.report.draw;

import fieldsalt.surface.fit.SurfaceReport.FittedVariogram;

/** The fitted model drawn as a curve. */
public final class Curves {
  private Curves() {}

  /** Semivariance of the true ln ECe at a distance: micro-scale part plus the structured part. */
  public static double semivariance(FittedVariogram v, double distanceM) {
    return v.microScale() + v.partialSill() * (1 - v.model().rho(distanceM));
  }
}
