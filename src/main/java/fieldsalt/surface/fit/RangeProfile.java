package fieldsalt.surface.fit;

import java.util.stream.DoubleStream;

/**
 * Profile likelihood interval of the distance parameter: the ranges whose best likelihood, sill and
 * micro-scale share free, is within 1.92 of the maximum (95 %; half the chi-squared quantile).
 */
final class RangeProfile {
  private static final double DROP = 1.9207;
  private static final int HALVINGS = 6;
  private final Reml reml;
  private final Reml.Fit fit;
  private final double top;

  RangeProfile(Reml reml, Reml.Fit fit) {
    this.reml = reml;
    this.fit = fit;
    double again = reml.bestAt(fit.model(), fit.model().correlation().rangeM());
    this.top = Math.max(fit.logLikelihood(), again);
  }

  /** {@code {low, high}} in metres; a bound of the range where the likelihood stays high. */
  double[] interval() {
    double best = Math.log(fit.model().correlation().rangeM());
    double low = Math.log(reml.bounds().lowM());
    double high = Math.log(reml.bounds().highM());
    return DoubleStream.of(low, high).parallel().map(end -> Math.exp(edge(best, end))).toArray();
  }

  /** Steps out towards the bound until the likelihood has dropped, then halves back. */
  private double edge(double best, double bound) {
    double step = Math.signum(bound - best) * Math.log(1.6);
    double inside = best;
    double outside = best;
    while (Math.abs(outside - bound) > 1e-9) {
      outside = Math.abs(bound - inside) < Math.abs(step) ? bound : inside + step;
      if (dropped(outside)) {
        return halve(inside, outside);
      }
      inside = outside;
    }
    return bound;
  }

  private double halve(double inside, double outside) {
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (inside + outside) / 2;
      if (dropped(middle)) {
        outside = middle;
      } else {
        inside = middle;
      }
    }
    return (inside + outside) / 2;
  }

  private boolean dropped(double logRange) {
    return !reml.reaches(fit.model(), Math.exp(logRange), top - DROP);
  }
}
