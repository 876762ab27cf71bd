package fieldsalt.surface.site;

import fieldsalt.geo.PlaceM;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Covariances;
import java.util.List;

/**
 * Places to predict in one field.
 *
 * @param part position of the field among the observations' parts
 * @param x metres from the observations' origin
 * @param drift standardised drifts: drifts x places; 0, the mean of the sites, where it has none
 * @param unknown whether a drift has no value there: drifts x places
 * @param beyond whether a drift has no value there, or one that no site has seen
 */
public record Points(
    int part, double[] x, double[] y, double[][] drift, boolean[][] unknown, boolean[] beyond) {

  public static Points of(Observations data, int part, List<PlaceM> places) {
    int n = places.size();
    double[] x = new double[n];
    double[] y = new double[n];
    double[][] drift = new double[data.drifts().size()][n];
    boolean[][] unknown = new boolean[drift.length][n];
    boolean[] beyond = new boolean[n];
    for (int i = 0; i < n; i++) {
      PlaceM place = places.get(i);
      x[i] = place.xM() - data.origin().xM();
      y[i] = place.yM() - data.origin().yM();
      for (int d = 0; d < drift.length; d++) {
        Observations.ScaledDrift known = data.drifts().get(d);
        double value = known.at(place);
        beyond[i] |= !(value >= known.least() && value <= known.most());
        unknown[d][i] = Double.isNaN(value);
        drift[d][i] = unknown[d][i] ? 0 : value;
      }
    }
    return new Points(part, x, y, drift, unknown, beyond);
  }

  public int size() {
    return x.length;
  }

  /**
   * Values of the shared effects in each place: drifts, then offsets.
   *
   * @param loadings on the offsets of what is seen there; zeros for z itself
   */
  public double[][] sharedDesign(double[] loadings) {
    double[][] design = new double[drift.length + loadings.length][];
    for (int d = 0; d < drift.length; d++) {
      design[d] = drift[d].clone();
    }
    for (int k = 0; k < loadings.length; k++) {
      design[drift.length + k] = new double[size()];
      java.util.Arrays.fill(design[drift.length + k], loadings[k]);
    }
    return design;
  }

  /**
   * Variance that a place has besides, where a drift has no value there: a drift is taken to vary
   * as it does over the sites, by 1.
   */
  public double unknownVariance(double[] driftVariances, int place) {
    return unknownCovariance(driftVariances, place, this, place);
  }

  /**
   * Covariance that two places of one field have besides, where a drift has no value in either: one
   * value is taken to stand in both, which is rather too wide for their mean.
   */
  public double unknownCovariance(
      double[] driftVariances, int place, Points other, int otherPlace) {
    double sum = 0;
    for (int d = 0; d < driftVariances.length; d++) {
      sum += unknown[d][place] && other.unknown[d][otherPlace] ? driftVariances[d] : 0;
    }
    return sum;
  }

  /** Prior covariance with each row of the field, one array a row; micro-scale is not in it. */
  public double[][] covariancesWith(FieldRows rows, CovarianceModel model) {
    return covariancesWith(rows, model, new Scratch());
  }

  /** The same in the scratch's arrays. */
  public double[][] covariancesWith(FieldRows rows, CovarianceModel model, Scratch scratch) {
    double[][] at = model.anisotropy().stretched(x, y);
    double[][] from = model.anisotropy().stretched(rows.x(), rows.y());
    Covariances covariances = new Covariances(model, size());
    double[][] byRow = scratch.rows(rows.siteOf().length, size());
    for (int r = 0; r < byRow.length; r++) {
      int s = rows.siteOf()[r];
      if (r > 0 && rows.siteOf()[r - 1] == s) {
        System.arraycopy(byRow[r - 1], 0, byRow[r], 0, size());
      } else {
        covariances.fill(from[0][s], from[1][s], at[0], at[1], 0, size(), byRow[r]);
      }
    }
    return byRow;
  }

  /** Prior covariance between these places and others of the same field, without micro-scale. */
  public double[][] covariancesWith(Points other, CovarianceModel model) {
    double[][] at = model.anisotropy().stretched(other.x, other.y);
    double[][] from = model.anisotropy().stretched(x, y);
    return covariances(from, at, model);
  }

  private static double[][] covariances(double[][] from, double[][] at, CovarianceModel model) {
    Covariances covariances = new Covariances(model, at[0].length);
    int n = at[0].length;
    double[][] c = new double[from[0].length][n];
    for (int i = 0; i < c.length; i++) {
      covariances.fill(from[0][i], from[1][i], at[0], at[1], 0, n, c[i]);
    }
    return c;
  }
}
