package fieldsalt.basis.depth;

/**
 * The depth over which ECe is averaged for a crop.
 *
 * @param depthCm from the surface, greater than 0
 */
public record RootZone(double depthCm, Uptake uptake) {
  private static final double[] QUARTERS = {0, 0.4, 0.7, 0.9, 1};

  public RootZone {
    if (!(depthCm > 0 && Double.isFinite(depthCm))) {
      throw new IllegalArgumentException("root zone must be deeper than 0 cm, was " + depthCm);
    }
  }

  /** Share of the weight that lies above a depth: 0 at the surface, 1 at and below the bottom. */
  double weightAbove(double depthCm) {
    double part = Math.min(1, depthCm / this.depthCm);
    return uptake == Uptake.UNIFORM ? part : quarters(part);
  }

  private static double quarters(double part) {
    int quarter = (int) Math.min(3, Math.floor(part * 4));
    double within = part * 4 - quarter;
    return QUARTERS[quarter] + within * (QUARTERS[quarter + 1] - QUARTERS[quarter]);
  }

  /** Weight of a layer, 0 if it lies below the root zone. */
  public double weight(double topCm, double bottomCm) {
    return weightAbove(bottomCm) - weightAbove(topCm);
  }
}
