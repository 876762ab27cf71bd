package fieldsalt.surface.kernel;

import fieldsalt.surface.covariance.Anisotropy;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Covariances;
import fieldsalt.surface.site.NeighbourSearch;

/** One field's data and model, made ready once for a local kernel and shared by all threads. */
final class KernelSites {
  private final CovarianceModel model;
  private final KernelData data;
  private final NeighbourSearch search;
  private final double[][] columns;
  private final double predictedVariance;

  /**
   * @param microScale whether the variance at a predicted place includes the micro-scale variance:
   *     yes for a point, no for what is averaged over an area
   */
  KernelSites(CovarianceModel model, KernelData data, boolean microScale) {
    this.model = model;
    KernelData distinct = model.microScale() > 0 ? data : data.withPlacesMerged();
    this.data = distinct.stretched(model.anisotropy());
    search = new NeighbourSearch(this.data.xM(), this.data.yM());
    columns = this.data.columns();
    predictedVariance = microScale ? model.pointVariance() : model.partialSill();
  }

  int size() {
    return data.size();
  }

  KernelData data() {
    return data;
  }

  Anisotropy anisotropy() {
    return model.anisotropy();
  }

  NeighbourSearch search() {
    return search;
  }

  /** Covariances for one thread, with room for so many points. */
  Covariances covariances(int points) {
    return new Covariances(model, points);
  }

  /** Columns of trend and values together. */
  int width() {
    return data.trend().length + columns.length;
  }

  KernelSums sums(int places) {
    return new KernelSums(predictedVariance, data.trend().length, columns.length, places);
  }

  /** Variance of a site's row: z with its micro-scale part, and its own error. */
  double rowVariance(int site) {
    return model.pointVariance() + data.errorVariance()[site];
  }

  /** Trend and values of a site, into {@code row[at]} and after. */
  void copyColumns(int site, double[] row, int at) {
    int k = at;
    for (double[] column : data.trend()) {
      row[k++] = column[site];
    }
    for (double[] column : columns) {
      row[k++] = column[site];
    }
  }
}
