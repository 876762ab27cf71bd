package fieldsalt.surface.site;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Sites that lack a value of a drift which steers their field. */
public final class DriftGaps {
  private DriftGaps() {}

  /**
   * The same data, where a site without a value of a drift takes the mean of its field's other
   * sites, with slope squared times the drift's variance in the field as an error of its own.
   *
   * @throws fieldsalt.gaussian.NotPositiveDefinite if a drift is a combination of the field means
   *     and the other
   */
  public static Observations filled(Observations data) {
    List<FieldRows> parts = data.parts();
    boolean gaps =
        parts.stream().flatMap(p -> Arrays.stream(p.drift())).anyMatch(DriftGaps::hasGap);
    if (!gaps) {
      return data;
    }
    Observations filled =
        data.withParts(
            parts.stream().map(p -> p.withDrift(filled(p.drift()), p.siteError())).toList());
    double[] slopes =
        DriftRegression.of(filled, filled.parts().stream().map(FieldRows::siteValues).toList())
            .slopes();
    List<FieldRows> wider = new ArrayList<>();
    for (int part = 0; part < parts.size(); part++) {
      FieldRows rows = filled.parts().get(part);
      double[][] given = parts.get(part).drift();
      double[] errors = rows.siteError().clone();
      for (int d = 0; d < given.length; d++) {
        double error = slopes[d] * slopes[d] * variance(given[d]);
        for (int s = 0; s < errors.length; s++) {
          errors[s] += Double.isNaN(given[d][s]) ? error : 0;
        }
      }
      wider.add(rows.withDrift(rows.drift(), errors));
    }
    return data.withParts(wider);
  }

  private static boolean hasGap(double[] values) {
    return Arrays.stream(values).anyMatch(Double::isNaN);
  }

  private static double[][] filled(double[][] drift) {
    return Arrays.stream(drift)
        .map(
            values -> {
              double mean = mean(values);
              return Arrays.stream(values).map(v -> Double.isNaN(v) ? mean : v).toArray();
            })
        .toArray(double[][]::new);
  }

  /** Of the values that are known; 0 if none is. */
  private static double mean(double[] values) {
    return Arrays.stream(values).filter(Double::isFinite).average().orElse(0);
  }

  private static double variance(double[] values) {
    double mean = mean(values);
    double[] known = Arrays.stream(values).filter(Double::isFinite).toArray();
    double square = Arrays.stream(known).map(v -> (v - mean) * (v - mean)).sum();
    return known.length < 2 ? 1 : square / (known.length - 1);
  }
}
