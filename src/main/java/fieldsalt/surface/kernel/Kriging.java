package fieldsalt.surface.kernel;

import fieldsalt.gaussian.Prediction;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.Points;
import fieldsalt.surface.site.Scratch;
import java.util.Arrays;

/** The best linear unbiased predictor: kriging with known and shared errors. */
public record Kriging(Solved solved) implements Predictor {

  @Override
  public Predicted predict(Points points, Scratch scratch) {
    return readings(points, new double[solved.data().offsets()], scratch);
  }

  @Override
  public Predicted readings(Points points, double[] loadings) {
    return readings(points, loadings, new Scratch());
  }

  private Predicted readings(Points points, double[] loadings, Scratch scratch) {
    FieldRows rows = solved.data().parts().get(points.part());
    double[][] c = points.covariancesWith(rows, solved.model(), scratch);
    double[][] constant = new double[1][points.size()];
    Arrays.fill(constant[0], 1);
    double[][] shared = points.sharedDesign(loadings);
    return new Kriged(
        points, solved.solution().predict(points.part(), c, constant, shared), solved.model());
  }

  private record Kriged(Points points, Prediction prediction, CovarianceModel model)
      implements Predicted {
    @Override
    public double[] mean() {
      return prediction.mean();
    }

    @Override
    public double[] variance() {
      double[] variance = prediction.varianceChange();
      for (int i = 0; i < variance.length; i++) {
        variance[i] = Math.max(0, variance[i] + model.partialSill()) + model.microScale();
      }
      return variance;
    }

    @Override
    public double[][] covariance(Predicted other) {
      if (!(other instanceof Kriged that) || points.part() != that.points.part()) {
        return sharedCovariance(other);
      }
      double[][] covariance = prediction.covarianceChange(that.prediction);
      double[][] prior = points.covariancesWith(that.points, model);
      for (int i = 0; i < covariance.length; i++) {
        for (int j = 0; j < covariance[i].length; j++) {
          covariance[i][j] += prior[i][j];
        }
      }
      return covariance;
    }

    @Override
    public double[][] shared() {
      return prediction.fromShared();
    }

    @Override
    public double[] covarianceWithSum(Predicted other, double[] weights) {
      if (!(other instanceof Kriged that) || points.part() != that.points.part()) {
        return Predicted.super.covarianceWithSum(other, weights);
      }
      double[][] change = prediction.covarianceChange(that.prediction.sum(weights));
      double[] sum = new double[change.length];
      Arrays.setAll(sum, i -> change[i][0]);
      double[][] prior = that.points.covariancesWith(points, model);
      for (int j = 0; j < weights.length; j++) {
        for (int i = 0; i < sum.length; i++) {
          sum[i] += weights[j] * prior[j][i];
        }
      }
      return sum;
    }
  }
}
