package fieldsalt.surface.fit;

import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Variogram;
import java.util.List;

/**
 * Weighted least squares of a model on a sample variogram, weights pairs / distance²: nugget and
 * partial sill, both at least 0, are solved for each range, and the range is searched for.
 */
public final class MomentsFit {
  private static final int COARSE = 60;
  private final List<SurfaceDetails.Lag> lags;

  /** A fitted model and its weighted sum of squares. */
  public record Fit(CovarianceModel model, double squares) {}

  public MomentsFit(List<SurfaceDetails.Lag> lags) {
    this.lags = List.copyOf(lags);
  }

  /** The best of one shape, its range inside the bounds. */
  public Fit fit(Variogram shape, RangeBounds bounds) {
    double low = Math.log(bounds.lowM());
    double high = Math.log(bounds.highM());
    int best = 0;
    for (int i = 1; i <= COARSE; i++) {
      best = at(shape, grid(low, high, i)) < at(shape, grid(low, high, best)) ? i : best;
    }
    double from = grid(low, high, Math.max(0, best - 1));
    double to = grid(low, high, Math.min(COARSE, best + 1));
    while (to - from > 1e-7) {
      double a = from + (to - from) * 0.382;
      double b = from + (to - from) * 0.618;
      if (at(shape, a) < at(shape, b)) {
        to = b;
      } else {
        from = a;
      }
    }
    return solve(shape.withRange(Math.exp((from + to) / 2)));
  }

  private static double grid(double low, double high, int i) {
    return low + (high - low) * i / COARSE;
  }

  private double at(Variogram shape, double logRange) {
    return solve(shape.withRange(Math.exp(logRange))).squares();
  }

  private Fit solve(Variogram correlation) {
    double w = 0;
    double wf = 0;
    double wff = 0;
    double wg = 0;
    double wfg = 0;
    for (SurfaceDetails.Lag lag : lags) {
      double weight = weight(lag);
      double f = 1 - correlation.rho(lag.distanceM());
      w += weight;
      wf += weight * f;
      wff += weight * f * f;
      wg += weight * lag.matheron();
      wfg += weight * f * lag.matheron();
    }
    double determinant = w * wff - wf * wf;
    double nugget = determinant > 1e-12 * w * wff ? (wff * wg - wf * wfg) / determinant : -1;
    double sill = determinant > 1e-12 * w * wff ? (w * wfg - wf * wg) / determinant : -1;
    if (nugget < 0 || sill < 0) {
      Fit noNugget = fit(correlation, 0, Math.max(0, wff > 0 ? wfg / wff : 0));
      Fit noSill = fit(correlation, Math.max(0, wg / w), 0);
      return noNugget.squares() <= noSill.squares() ? noNugget : noSill;
    }
    return fit(correlation, nugget, sill);
  }

  private static double weight(SurfaceDetails.Lag lag) {
    return lag.pairs() / (lag.distanceM() * lag.distanceM());
  }

  private Fit fit(Variogram correlation, double nugget, double sill) {
    double squares = 0;
    for (SurfaceDetails.Lag lag : lags) {
      double model = nugget + sill * (1 - correlation.rho(lag.distanceM()));
      squares += weight(lag) * (lag.matheron() - model) * (lag.matheron() - model);
    }
    return new Fit(new CovarianceModel(correlation, sill, nugget), squares);
  }
}
