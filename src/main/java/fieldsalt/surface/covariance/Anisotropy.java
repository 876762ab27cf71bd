package fieldsalt.surface.covariance;

/**
 * Geometric anisotropy: correlation reaches farther along one direction than across it.
 *
 * @param azimuthDeg direction of the longest reach, degrees clockwise from north, in [0, 180)
 * @param ratio reach along it divided by reach across it, at least 1; 1 is isotropic
 */
public record Anisotropy(double azimuthDeg, double ratio) {
  /** The same reach in every direction. */
  public static final Anisotropy NONE = new Anisotropy(0, 1);

  public Anisotropy {
    if (!(ratio >= 1) || !(azimuthDeg >= 0 && azimuthDeg < 180)) {
      throw new IllegalArgumentException(
          "anisotropy needs a ratio of at least 1 and an azimuth in [0, 180), was "
              + ratio
              + " and "
              + azimuthDeg);
    }
  }

  /**
   * Coordinates in which plain distance is the model's distance: {@code {along, across}} in metres,
   * the across one stretched by the ratio. {@code {xM, yM}} itself where the ratio is 1.
   */
  public double[] stretch(double xM, double yM) {
    if (ratio == 1) {
      return new double[] {xM, yM};
    }
    double azimuth = Math.toRadians(azimuthDeg);
    double sin = Math.sin(azimuth);
    double cos = Math.cos(azimuth);
    return new double[] {xM * sin + yM * cos, (xM * cos - yM * sin) * ratio};
  }

  /** Many points at once: all of their first coordinates, then all of their second. */
  public double[][] stretched(double[] xM, double[] yM) {
    if (ratio == 1) {
      return new double[][] {xM, yM};
    }
    double[][] out = new double[2][xM.length];
    for (int i = 0; i < xM.length; i++) {
      double[] p = stretch(xM[i], yM[i]);
      out[0][i] = p[0];
      out[1][i] = p[1];
    }
    return out;
  }
}
