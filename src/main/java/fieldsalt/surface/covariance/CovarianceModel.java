package fieldsalt.surface.covariance;

/**
 * Covariance of the error-free property z between two places of one field, partial sill x
 * rho(distance); at one and the same place the micro-scale variance comes on top. Laboratory errors
 * are no part of it.
 *
 * @param correlation the shape and its distance parameter
 * @param anisotropy how distances are stretched before {@code correlation} sees them
 * @param partialSill variance of the correlated part, at least 0, in the unit of z squared
 * @param microScale c_micro: variance of true differences at shorter distances than any sampled
 */
public record CovarianceModel(
    Variogram correlation, Anisotropy anisotropy, double partialSill, double microScale) {
  public CovarianceModel {
    if (!(partialSill >= 0) || !(microScale >= 0)) {
      throw new IllegalArgumentException(
          "variances must be at least 0, were " + partialSill + " and " + microScale);
    }
  }

  /** An isotropic model. */
  public CovarianceModel(Variogram correlation, double partialSill, double microScale) {
    this(correlation, Anisotropy.NONE, partialSill, microScale);
  }

  /** Covariance between two different points at {@code hM}, metres after stretching. */
  public double covariance(double hM) {
    return partialSill * correlation.rho(hM);
  }

  /** Variance of z at a point: partial sill and micro-scale variance. */
  public double pointVariance() {
    return partialSill + microScale;
  }
}
