package fieldsalt.surface.fit;

import fieldsalt.surface.covariance.Anisotropy;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Variogram;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Fits covariance models by restricted likelihood inside the range's bounds. */
public final class Reml {
  private static final double[] SHARES = {0.05, 0.35, 0.75};
  private static final double[] AZIMUTHS = {0, 30, 60, 90, 120, 150};
  private static final int RANGES = 8;
  private static final double[] WIDE = {0.4, 0.3, 0.2};
  private static final double[] NARROW = {0.1, 0.1, 0.1};

  /** Parameters are rounded to this (of a logarithm or a share): far finer than they are known. */
  private static final double GRAIN = 1e-3;

  /** From so many sites on one climb is enough, to a thousandth of the log-likelihood. */
  private static final int MANY_SITES = 300;

  private static final double ENOUGH_OF_MANY = 1e-3;

  private final Likelihood likelihood;
  private final RangeBounds bounds;
  private final double sillLow;
  private final double sillHigh;
  private final double sillStart;
  private final boolean large;

  /** A fitted model and its restricted log-likelihood. */
  public record Fit(CovarianceModel model, double logLikelihood) {}

  public Reml(Likelihood likelihood) {
    this.likelihood = likelihood;
    this.bounds = RangeBounds.of(likelihood.data());
    this.large = isLarge(likelihood);
    double pooled = likelihood.data().pooledVariance();
    double scale = pooled > 0 ? pooled : 1e-6;
    sillStart = scale;
    sillLow = 1e-4 * scale;
    sillHigh = 300 * scale;
  }

  /** Whether there are so many sites that a coarser search finds the same model. */
  static boolean isLarge(Likelihood likelihood) {
    return likelihood.data().siteCount() > MANY_SITES;
  }

  public RangeBounds bounds() {
    return bounds;
  }

  /**
   * The logarithm of the sill that is most likely, the rest of the model held.
   *
   * @param shape sill 1, micro-scale share inside
   */
  Peak bestSill(CovarianceModel shape) {
    CovarianceModel start = Likelihood.scaled(shape, sillStart);
    return Peak.of(
        s -> likelihood.of(Likelihood.scaled(shape, Math.exp(s))),
        Math.log(likelihood.matchedSill(start, sillLow, sillHigh)),
        Math.log(sillLow),
        Math.log(sillHigh));
  }

  /** The best isotropic model of one shape. */
  public Fit fit(Variogram shape) {
    List<NelderMead.Vertex> starts = starts(shape);
    int tried = likelihood.data().siteCount() > 200 ? 1 : 3;
    NelderMead.Vertex best = null;
    for (NelderMead.Vertex start : starts.subList(0, tried)) {
      NelderMead.Vertex top = climb(p -> value(shape, p), start.at(), WIDE);
      best = best == null || top.value() > best.value() ? top : best;
    }
    NelderMead.Vertex again = large ? best : climb(p -> value(shape, p), best.at(), NARROW);
    return rounded(shape, again.at());
  }

  /** The best model near one that was fitted to nearly the same data, its anisotropy held. */
  Fit again(CovarianceModel near) {
    double[] from = parameters(near);
    double[] low = {Math.log(bounds.lowM()), Math.log(sillLow), 0};
    double[] high = {Math.log(bounds.highM()), Math.log(sillHigh), 1};
    NelderMead search =
        new NelderMead(
            p ->
                likelihood.of(
                    shape(
                        near.correlation().withRange(Math.exp(p[0])),
                        near.anisotropy(),
                        new double[] {p[1], p[2]})),
            low,
            high,
            120);
    double[] at = search.climb(from, WIDE, 1e-4).at();
    double[] q = Arrays.stream(at).map(v -> Math.round(v / GRAIN) * GRAIN).toArray();
    CovarianceModel model =
        shape(
            near.correlation().withRange(Math.exp(Math.min(q[0], high[0]))),
            near.anisotropy(),
            new double[] {q[1], q[2]});
    return new Fit(model, likelihood.of(model));
  }

  /** The highest likelihood at one range, sill and micro-scale share free. */
  double bestAt(CovarianceModel start, double rangeM) {
    return climbAt(start, rangeM, Double.POSITIVE_INFINITY);
  }

  /** Whether some sill and micro-scale share make the likelihood as high as wanted at one range. */
  boolean reaches(CovarianceModel start, double rangeM, double wanted) {
    return climbAt(start, rangeM, wanted) >= wanted;
  }

  private double climbAt(CovarianceModel start, double rangeM, double enough) {
    Variogram shape = start.correlation().withRange(rangeM);
    double[] from = parameters(start);
    NelderMead search =
        new NelderMead(
            p -> likelihood.of(shape(shape, start.anisotropy(), p)),
            new double[] {Math.log(sillLow), 0},
            new double[] {Math.log(sillHigh), 1},
            80);
    double[] step = {0.2, 0.15};
    return search.until(enough).climb(new double[] {from[1], from[2]}, step, 1e-3).value();
  }

  private static CovarianceModel shape(Variogram v, Anisotropy anisotropy, double[] p) {
    double sill = Math.exp(p[0]);
    return new CovarianceModel(v, anisotropy, sill * (1 - p[1]), sill * p[1]);
  }

  /** The best of one shape with geometric anisotropy, starting from the isotropic fit. */
  public Fit fitAnisotropic(Variogram shape, Fit isotropic) {
    double[] from = parameters(isotropic.model());
    NelderMead.Vertex best = null;
    for (double azimuth : AZIMUTHS) {
      double[] p = {from[0] + 0.35, from[1], from[2], azimuth, Math.log(2)};
      double value = value(shape, p);
      best = best == null || value > best.value() ? new NelderMead.Vertex(p, value) : best;
    }
    double[] low = {Math.log(bounds.lowM()), Math.log(sillLow), 0, -180, 0};
    double[] high = {Math.log(bounds.highM()), Math.log(sillHigh), 1, 360, Math.log(20)};
    NelderMead search = new NelderMead(p -> value(shape, p), low, high, 400);
    double first = large ? ENOUGH_OF_MANY : 1e-5;
    NelderMead.Vertex top = search.climb(best.at(), new double[] {0.3, 0.2, 0.2, 20, 0.4}, first);
    if (!large) {
      top = search.climb(top.at(), new double[] {0.1, 0.1, 0.1, 8, 0.15}, 1e-6);
    }
    return rounded(shape, top.at());
  }

  private NelderMead.Vertex climb(ToDoubleFunction<double[]> f, double[] start, double[] step) {
    double[] low = {Math.log(bounds.lowM()), Math.log(sillLow), 0};
    double[] high = {Math.log(bounds.highM()), Math.log(sillHigh), 1};
    return new NelderMead(f, low, high, 250).climb(start, step, large ? ENOUGH_OF_MANY : 1e-7);
  }

  private List<NelderMead.Vertex> starts(Variogram shape) {
    List<NelderMead.Vertex> starts = new ArrayList<>();
    double low = Math.log(Math.max(bounds.lowM(), bounds.typicalSpacingM() / 3));
    double high = Math.log(bounds.highM() / 2);
    for (int i = 0; i < RANGES; i++) {
      for (double share : SHARES) {
        double[] p = {low + (high - low) * (i + 0.5) / RANGES, Math.log(sillStart), share};
        p[1] = Math.log(likelihood.matchedSill(model(shape, p), sillLow, sillHigh));
        starts.add(new NelderMead.Vertex(p, value(shape, p)));
      }
    }
    starts.sort(Comparator.comparingDouble(v -> -v.value()));
    return starts;
  }

  private double value(Variogram shape, double[] p) {
    return likelihood.of(model(shape, p));
  }

  private static CovarianceModel model(Variogram shape, double[] p) {
    double sill = Math.exp(p[1]);
    Anisotropy anisotropy = p.length > 3 ? anisotropy(p[3], Math.exp(p[4])) : Anisotropy.NONE;
    return new CovarianceModel(
        shape.withRange(Math.exp(p[0])), anisotropy, sill * (1 - p[2]), sill * p[2]);
  }

  private static Anisotropy anisotropy(double azimuth, double ratio) {
    double turned = azimuth % 180;
    return new Anisotropy(turned < 0 ? (turned + 180) % 180 : turned, ratio);
  }

  private static double[] parameters(CovarianceModel model) {
    double sill = model.pointVariance();
    return new double[] {
      Math.log(model.correlation().rangeM()), Math.log(sill), model.microScale() / sill
    };
  }

  /** Rounding makes the fit the same where the input differs by rounding only. */
  private Fit rounded(Variogram shape, double[] p) {
    double[] q = new double[p.length];
    for (int i = 0; i < p.length; i++) {
      double grain = i == 3 ? 0.1 : GRAIN;
      q[i] = Math.round(p[i] / grain) * grain;
    }
    double low = Math.log(bounds.lowM());
    double high = Math.log(bounds.highM());
    q[0] = q[0] > high - GRAIN ? high : Math.max(low, q[0]);
    CovarianceModel model = model(shape, q);
    double value = likelihood.of(model);
    return value == Double.NEGATIVE_INFINITY
        ? new Fit(model(shape, p), likelihood.of(model(shape, p)))
        : new Fit(model, value);
  }
}
