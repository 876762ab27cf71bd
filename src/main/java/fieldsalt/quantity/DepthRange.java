package fieldsalt.quantity;

/** A layer of soil, in cm below the surface; top is above bottom. */
public record DepthRange(double topCm, double bottomCm) {
  public DepthRange {
    if (!(topCm >= 0 && bottomCm > topCm)) {
      throw new IllegalArgumentException(
          "depth must run down from the surface, was " + topCm + "-" + bottomCm + " cm");
    }
  }

  public double thicknessCm() {
    return bottomCm - topCm;
  }
}
