package fieldsalt.surface.fit;

import fieldsalt.gaussian.Cholesky;
import fieldsalt.gaussian.LeaveOut;
import fieldsalt.gaussian.MixedModel;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Covariances;
import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.Observations;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

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
    List<MixedModel.Block> blocks =
        IntStream.range(0, data.parts().size())
            .parallel()
            .mapToObj(part -> block(data, part, model))
            .toList();
    return new Solved(data, model, new MixedModel(blocks, data.drifts().size(), data.prior()), 1);
  }

  private static MixedModel.Block block(Observations data, int part, CovarianceModel model) {
    FieldRows rows = data.parts().get(part);
    double[] constant = new double[rows.rows().size()];
    Arrays.fill(constant, 1);
    return new MixedModel.Block(
        covariance(rows, model), new double[][] {constant}, data.sharedDesign(part), rows.values());
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
      double ofSite = model.pointVariance() + rows.siteError()[s];
      d[i][i] = ofSite + rows.own()[i];
      for (int j = i + 1; j < n; j++) {
        d[i][j] = site[j] == s ? ofSite : bySite[site[j]];
      }
    }
    return d;
  }

  /** What each drift, standardised, adds to the variance over the sites. */
  public double[] driftVariances() {
    double[] effects = solution.sharedEffects();
    double[] variances = new double[data.drifts().size()];
    for (int d = 0; d < variances.length; d++) {
      variances[d] = effects[d] * effects[d];
    }
    return variances;
  }

  /** What these data say of the shared offsets, for fields that are solved apart. */
  public MixedModel.Prior ofOffsets() {
    int fixed = data.drifts().size();
    int count = data.offsets();
    double[] effects = solution.sharedEffects();
    double[][] covariance = solution.sharedCovariance();
    double[][] own = new double[count][];
    for (int k = 0; k < count; k++) {
      own[k] = Arrays.copyOfRange(covariance[fixed + k], fixed, fixed + count);
    }
    double[] mean = Arrays.copyOfRange(effects, fixed, fixed + count);
    return new MixedModel.Prior(mean, count == 0 ? own : Cholesky.factor(own).inverse());
  }

  public Solved withWeight(double other) {
    return new Solved(data, model, solution, other);
  }

  /** Restricted log-likelihood with ½ ln|X'X|. */
  double logLikelihood(double logDesign) {
    return solution.restrictedLogLikelihood() + 0.5 * logDesign;
  }

  LeaveOut leaveOut() {
    return new LeaveOut(solution, data.parts().size());
  }
}
