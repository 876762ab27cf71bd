package fieldsalt.zones.lattice;

/** Class and mean value of each region of a lattice, over its inside nodes. */
public final class Regions {
  private final int[] klass;
  private final double[] sum;
  private final int[] count;

  private Regions(int regions) {
    klass = new int[regions];
    sum = new double[regions];
    count = new int[regions];
  }

  public static Regions of(Nodes nodes, int[] region) {
    int most = 0;
    for (int r : region) {
      most = Math.max(most, r);
    }
    Regions result = new Regions(most + 1);
    for (int i = 0; i < region.length; i++) {
      if (region[i] >= 0 && nodes.inside()[i]) {
        result.klass[region[i]] = nodes.klass()[i];
        result.sum[region[i]] += nodes.value()[i];
        result.count[region[i]]++;
      }
    }
    return result;
  }

  public int klass(int region) {
    return klass[region];
  }

  public double value(int region) {
    return count[region] == 0 ? 0 : sum[region] / count[region];
  }
}
