package fieldsalt.surface.choice;

import fieldsalt.surface.fit.LeftOut;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.fit.SurfaceReport;
import fieldsalt.surface.site.Observations;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * A method that was tried, with its predictors (one a covariance model averaged over) and what
 * leave-one-out says of it.
 */
public record Tried(
    SurfaceMethod method, Observations data, List<Predictor> predictors, List<LeftOut> leftOut) {

  /** The predictor of the heaviest weight. */
  public Predictor likeliest() {
    Predictor likeliest = predictors.get(0);
    for (Predictor predictor : predictors) {
      boolean heavier = predictor.solved().weight() > likeliest.solved().weight();
      likeliest = heavier ? predictor : likeliest;
    }
    return likeliest;
  }

  double meanCrps() {
    return mean(LeftOut::crps);
  }

  private double mean(ToDoubleFunction<LeftOut> figure) {
    return leftOut.stream().mapToDouble(figure).average().orElse(0);
  }

  /** The figures of the report. */
  public SurfaceReport.Candidate candidate() {
    double[] squared =
        leftOut.stream().mapToDouble(LeftOut::squaredStandardised).sorted().toArray();
    return new SurfaceReport.Candidate(
        method,
        leftOut.size(),
        Math.sqrt(mean(l -> l.error() * l.error())),
        mean(l -> Math.abs(l.error())),
        mean(LeftOut::error),
        meanCrps(),
        Arrays.stream(squared).average().orElse(0),
        median(squared),
        mean(l -> Math.abs(l.chanceBelow() - 0.5) <= 0.45 ? 1 : 0));
  }

  public static double median(double[] sorted) {
    int n = sorted.length;
    return n == 0 ? 0 : (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
  }
}
