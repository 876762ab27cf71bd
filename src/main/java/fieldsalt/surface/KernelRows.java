package fieldsalt.surface;

/**
 * The rows of a local kriging system, one a site: covariances with the sites (upper triangle), with
 * the places, then the site's trend and values.
 */
final class KernelRows {
  private final KernelSites sites;
  private final double[][] rows;
  private final double[] x;
  private final double[] y;

  KernelRows(KernelSites sites, int mostSites, int mostPlaces) {
    this.sites = sites;
    rows = new double[mostSites][mostSites + mostPlaces + sites.width()];
    x = new double[mostSites];
    y = new double[mostSites];
  }

  int capacity() {
    return rows.length;
  }

  /** The system of sites {@code index[0..n-1]} and the group's places from..to-1. */
  double[][] fill(int[] index, int n, KernelGroup group, int from, int to) {
    KernelData data = sites.data();
    for (int i = 0; i < n; i++) {
      x[i] = data.xM()[index[i]];
      y[i] = data.yM()[index[i]];
    }
    for (int i = 0; i < n; i++) {
      sites.covariances().fill(x[i], y[i], x, y, i + 1, n, rows[i], i + 1);
      sites.covariances().fill(x[i], y[i], group.x, group.y, from, to, rows[i], n);
      rows[i][i] = sites.rowVariance(index[i]);
      sites.copyColumns(index[i], rows[i], n + to - from);
    }
    return rows;
  }
}
