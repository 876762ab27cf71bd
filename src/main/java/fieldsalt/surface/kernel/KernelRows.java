package fieldsalt.surface.kernel;

import fieldsalt.surface.covariance.Covariances;

/**
 * The rows of a local kriging system, one a site: covariances with the sites (upper triangle), with
 * the places, then the site's trend and values.
 */
final class KernelRows {
  private final KernelSites sites;
  private final Covariances covariances;
  private final double[][] rows;

  /** Coordinates of the sites, then of the places. */
  private final double[] x;

  private final double[] y;

  KernelRows(KernelSites sites, int mostSites, int mostPlaces) {
    this.sites = sites;
    covariances = sites.covariances(mostSites + mostPlaces);
    rows = new double[mostSites][mostSites + mostPlaces + sites.width()];
    x = new double[mostSites + mostPlaces];
    y = new double[mostSites + mostPlaces];
  }

  /** The system of sites {@code index[0..n-1]} and the group's places from..to-1. */
  double[][] fill(int[] index, int n, KernelGroup group, int from, int to) {
    KernelData data = sites.data();
    for (int i = 0; i < n; i++) {
      x[i] = data.xM()[index[i]];
      y[i] = data.yM()[index[i]];
    }
    int ends = n + to - from;
    System.arraycopy(group.x, from, x, n, to - from);
    System.arraycopy(group.y, from, y, n, to - from);
    for (int i = 0; i < n; i++) {
      covariances.fill(x[i], y[i], x, y, i + 1, ends, rows[i]);
      rows[i][i] = sites.rowVariance(index[i]);
      sites.copyColumns(index[i], rows[i], ends);
    }
    return rows;
  }
}
