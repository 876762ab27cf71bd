package fieldsalt.surface.site;

/**
 * Inverse distance squared over all sites of the field; a site with several rows counts once, its
 * rows weighted by their precision. A place that is a site gets that site's value.
 */
public record IdwRule(Observations data) implements LinearRule {

  @Override
  public Weights at(Points points) {
    int m = points.size();
    FieldRows rows = data.parts().get(points.part());
    double[] share = rowShares(rows);
    double[][] own = new double[m][share.length];
    int[] column = new int[m];
    for (int i = 0; i < m; i++) {
      column[i] = i;
      double[] bySite = siteWeights(rows, points.x()[i], points.y()[i], -1);
      for (int r = 0; r < share.length; r++) {
        own[i][r] = bySite[rows.siteOf()[r]] * share[r];
      }
    }
    return new Weights(own, new double[m][0], column);
  }

  @Override
  public double[][] carriers(int part) {
    return new double[0][];
  }

  /** Weights of the sites at a place, summing to 1. */
  public static double[] siteWeights(FieldRows rows, double x, double y, int without) {
    double[] w = new double[rows.x().length];
    double sum = 0;
    for (int s = 0; s < w.length; s++) {
      double d2 = square(rows.x()[s] - x) + square(rows.y()[s] - y);
      w[s] = s == without ? 0 : 1 / Math.max(d2, 1e-12);
      sum += w[s];
    }
    for (int s = 0; s < w.length; s++) {
      w[s] /= sum;
    }
    return w;
  }

  private static double square(double x) {
    return x * x;
  }

  /** Each row's part of its site's value. */
  public static double[] rowShares(FieldRows rows) {
    double[] share = new double[rows.siteOf().length];
    double[] sum = new double[rows.x().length];
    for (int r = 0; r < share.length; r++) {
      share[r] = 1 / Math.max(rows.own()[r], 1e-12);
      sum[rows.siteOf()[r]] += share[r];
    }
    for (int r = 0; r < share.length; r++) {
      share[r] /= sum[rows.siteOf()[r]];
    }
    return share;
  }
}
