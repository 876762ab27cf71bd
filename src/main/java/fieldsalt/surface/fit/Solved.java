package fieldsalt.surface.fit;

import fieldsalt.gaussian.LeaveOut;
import fieldsalt.gaussian.MixedModel;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Covariances;
import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.Observations;
import java.util.ArrayList;
import java.util.List;

/**
 * The data solved under one covariance model.
 *
 * @param weight of this model among those averaged over; they sum to 1
 */
public record Solved(Observations data, CovarianceModel model, MixedModel solution, double weight) {

  /**
   * Factors and solves.
   *
   * @throws fieldsalt.gaussian.NotPositiveDefinite if two rows say exactly the same without error
   */
  public static Solved of(Observations data, CovarianceModel model) {
    List<MixedModel.Block> blocks = new ArrayList<>();
    for (int part = 0; part < data.parts().size(); part++) {
      FieldRows rows = data.parts().get(part);
      blocks.add(
          new MixedModel.Block(
              covariance(rows, model), data.columns(part), data.design(part), rows.values()));
    }
    return new Solved(data, model, new MixedModel(blocks, data.fixed(), data.offsets()), 1);
  }

  /** D of one part: upper triangle only. */
  private static double[][] covariance(FieldRows rows, CovarianceModel model) {
    int[] site = rows.siteOf();
    int n = site.length;
    double[][] d = new double[n][n];
    double[][] at = model.anisotropy().stretched(rows.x(), rows.y());
    int sites = at[0].length;
    double[] bySite = new double[sites];
    Covariances covariances = new Covariances(model, sites);
    for (int i = 0; i < n; i++) {
      int s = site[i];
      if (i == 0 || s != site[i - 1]) {
        covariances.fill(at[0][s], at[1][s], at[0], at[1], s, sites, bySite);
      }
      d[i][i] = model.pointVariance() + rows.own()[i];
      for (int j = i + 1; j < n; j++) {
        d[i][j] = site[j] == s ? model.pointVariance() : bySite[site[j]];
      }
    }
    return d;
  }

  /** What each drift, standardised, adds to the variance over the sites. */
  public double[] driftVariances() {
    double[] effects = solution.effects();
    double[] variances = new double[data.drifts().size()];
    for (int d = 0; d < variances.length; d++) {
      double effect = effects[data.parts().size() + d];
      variances[d] = effect * effect;
    }
    return variances;
  }

  public Solved withWeight(double other) {
    return new Solved(data, model, solution, other);
  }

  /** Restricted log-likelihood with ½ ln|X'X|. */
  double logLikelihood(double logDesign) {
    return solution.restrictedLogLikelihood() + 0.5 * logDesign;
  }

  LeaveOut leaveOut() {
    int[][] columns = new int[data.parts().size()][];
    for (int part = 0; part < columns.length; part++) {
      columns[part] = data.columns(part);
    }
    return new LeaveOut(solution, columns);
  }

  /** Variance under this model of a linear combination of all rows that holds no fixed effect. */
  double variance(double[][] rule) {
    double sum = 0;
    double[] shared = new double[data.offsets()];
    for (int part = 0; part < rule.length; part++) {
      sum += solution.factor(part).quadratic(rule[part]);
      double[][] loadings = data.parts().get(part).loadings();
      for (int k = 0; k < shared.length; k++) {
        for (int i = 0; i < rule[part].length; i++) {
          shared[k] += rule[part][i] * loadings[k][i];
        }
      }
    }
    for (double s : shared) {
      sum += s * s;
    }
    return sum;
  }
}
