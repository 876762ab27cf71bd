package fieldsalt.surface.covariance;

/**
 * A correlation model: one number falls from 1 at distance 0 towards 0. The variogram is partial
 * sill x (1 - rho) plus the nugget.
 */
public sealed interface Variogram permits Exponential, Spherical, Matern32 {
  /** The model's own distance parameter in metres, greater than 0 (not the practical range). */
  double rangeM();

  /** Correlation at distance {@code hM} in metres, at least 0. */
  double rho(double hM);

  /** {@code exponential}, {@code spherical} or {@code matern 3/2}. */
  String name();

  /** The same model with another distance parameter in metres. */
  Variogram withRange(double newRangeM);

  /** Refuses a distance parameter that is not a positive number. */
  static void checkRange(double rangeM) {
    if (!(rangeM > 0) || Double.isInfinite(rangeM)) {
      throw new IllegalArgumentException("a range must be greater than 0 m, was " + rangeM);
    }
  }
}
