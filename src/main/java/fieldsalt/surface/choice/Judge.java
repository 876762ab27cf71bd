package fieldsalt.surface.choice;

import fieldsalt.basis.site.Scale;
import fieldsalt.surface.fit.Accuracy;
import fieldsalt.surface.fit.Crps;
import fieldsalt.surface.fit.LeftOut;
import fieldsalt.surface.fit.Validation;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Validation figures from predictions of values that were not used. */
public final class Judge {
  /** Median of chi-squared with 1 degree of freedom, and the sd of a sample median times root n. */
  private static final double MEDIAN = 0.454936;

  private static final double MEDIAN_SD = 1.061;
  private static final double TWO_SIDED = 1.959964;

  private Judge() {}

  /** How well sites that were left out were predicted. */
  public static Accuracy accuracy(List<LeftOut> left, List<LeftOut> fieldMean) {
    double square = mean(left, l -> l.error() * l.error());
    double ofMean = mean(fieldMean, l -> l.error() * l.error());
    return new Accuracy(
        left.size(),
        Math.sqrt(square),
        ofMean > 0 ? 1 - square / ofMean : 0,
        mean(left, l -> Math.abs(l.chanceBelow() - 0.5) <= 0.45 ? 1 : 0));
  }

  /** On the scale of the fit. */
  public static Validation onFitScale(List<LeftOut> left, List<LeftOut> fieldMean, String unit) {
    return figures(
        left,
        unit,
        mean(left, LeftOut::error),
        mean(left, l -> l.error() * l.error()),
        mean(left, l -> Math.abs(l.value() - l.predicted().quantile(0.5))),
        mean(left, LeftOut::crps),
        mean(fieldMean, LeftOut::crps));
  }

  /** In the property's own unit. */
  static Validation inUnit(List<LeftOut> left, List<LeftOut> fieldMean, Scale scale, String unit) {
    if (scale == Scale.NATURAL) {
      return onFitScale(left, fieldMean, unit);
    }
    ToDoubleFunction<LeftOut> error = l -> Math.exp(l.value()) - l.predicted().meanOfExp();
    ToDoubleFunction<LeftOut> crps = l -> Crps.ofExp(l.predicted(), Math.exp(l.value()));
    return figures(
        left,
        unit,
        mean(left, error),
        mean(left, l -> error.applyAsDouble(l) * error.applyAsDouble(l)),
        mean(left, l -> Math.abs(Math.exp(l.value()) - Math.exp(l.predicted().quantile(0.5)))),
        mean(left, crps),
        mean(fieldMean, crps));
  }

  private static double mean(List<LeftOut> left, ToDoubleFunction<LeftOut> figure) {
    return left.stream().mapToDouble(figure).average().orElse(0);
  }

  private static Validation figures(
      List<LeftOut> left,
      String unit,
      double bias,
      double square,
      double mae,
      double crps,
      double crpsOfMean) {
    return new Validation(
        unit,
        left.size(),
        Math.sqrt(square),
        mae,
        bias,
        crps,
        crpsOfMean > 0 ? 1 - crps / crpsOfMean : 0,
        standardised(left),
        coverage(left));
  }

  private static Validation.StandardisedErrors standardised(List<LeftOut> left) {
    double n = Math.max(1, left.size());
    double[] squared = left.stream().mapToDouble(LeftOut::squaredStandardised).sorted().toArray();
    double meanBand = TWO_SIDED * Math.sqrt(2 / n);
    double medianBand = TWO_SIDED * MEDIAN_SD / Math.sqrt(n);
    return new Validation.StandardisedErrors(
        java.util.Arrays.stream(squared).average().orElse(0),
        Math.max(0, 1 - meanBand),
        1 + meanBand,
        Tried.median(squared),
        Math.max(0, MEDIAN - medianBand),
        MEDIAN + medianBand);
  }

  private static List<Validation.Coverage> coverage(List<LeftOut> left) {
    List<Validation.Coverage> coverage = new ArrayList<>();
    for (int percent = 5; percent <= 95; percent += 5) {
      double p = percent / 100.0;
      coverage.add(
          new Validation.Coverage(
              p, mean(left, l -> Math.abs(l.chanceBelow() - 0.5) <= p / 2 ? 1 : 0)));
    }
    return coverage;
  }
}
