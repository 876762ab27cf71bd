package fieldsalt.basis;

import fieldsalt.facts.Plausibility;
import fieldsalt.finding.Finding;
import fieldsalt.read.Sample;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Readings whose unit looks wrong: beyond what the method can give, or beyond what is likely and a
 * factor of 10, 100 or 1000 brings them among the other readings of the method. They are left out
 * until the user confirms the unit, never mended.
 */
final class UnitSlips {
  private static final double NEAR = Math.log(3);

  private final Map<MethodKey, Double> medians = new TreeMap<>();
  private final boolean accept;

  UnitSlips(Collection<Sample> samples, boolean accept) {
    this.accept = accept;
    Map<MethodKey, List<Double>> believable = new TreeMap<>();
    for (Sample sample : samples) {
      if (sample.ec().isEmpty() || sample.method().isEmpty()) {
        continue;
      }
      double ec = sample.ec().get().dSPerM();
      Plausibility limits = limits(sample);
      if (!limits.refuses(ec) && !limits.doubts(ec)) {
        believable.computeIfAbsent(key(sample), k -> new ArrayList<>()).add(Math.log(ec));
      }
    }
    believable.forEach((key, values) -> medians.put(key, median(values)));
  }

  private static double median(List<Double> values) {
    Collections.sort(values);
    int n = values.size();
    return (values.get((n - 1) / 2) + values.get(n / 2)) / 2;
  }

  static Plausibility limits(Sample sample) {
    return Plausibility.of("ec_" + sample.method().orElseThrow().label());
  }

  private static MethodKey key(Sample sample) {
    return MethodKey.of(sample.method().orElseThrow(), sample.reading());
  }

  /** The finding that leaves this row out; empty if its unit is believable or confirmed. */
  Optional<Finding> check(Sample sample) {
    double ec = sample.ec().orElseThrow().dSPerM();
    Plausibility limits = limits(sample);
    if (!limits.refuses(ec) && (accept || !limits.doubts(ec))) {
      return Optional.empty();
    }
    if (ec <= 0 || Double.isNaN(ec)) {
      return Optional.of(
          Rows.finding(
              "ec-not-positive",
              sample,
              "EC " + Rows.number(ec) + " dS/m",
              "row left out; an EC is above 0: correct the cell or write it as <limit"));
    }
    Optional<String> unit = likelyUnit(ec, key(sample), limits);
    if (unit.isPresent()) {
      return Optional.of(
          Rows.finding(
              "unit-slip",
              sample,
              "EC " + Rows.number(ec) + " dS/m by " + key(sample).label(),
              "row left out until you confirm the unit; it looks like " + unit.get()));
    }
    return limits.refuses(ec)
        ? Optional.of(
            Rows.finding(
                "ec-impossible",
                sample,
                "EC " + Rows.number(ec) + " dS/m by " + key(sample).label(),
                "row left out: the method cannot give more than "
                    + Rows.number(limits.refuseAbove().orElse(Double.NaN))
                    + " dS/m; check the unit"))
        : Optional.empty();
  }

  private Optional<String> likelyUnit(double ec, MethodKey key, Plausibility limits) {
    boolean high = ec > 1;
    String[] names =
        high
            ? new String[] {
              "uS/cm (1000 times)", "mS/m (100 times)", "a decimal point slip (10 times)"
            }
            : new String[] {"S/m (10 times)", "a slip of 100 times", "a slip of 1000 times"};
    double[] factors = high ? new double[] {1e-3, 1e-2, 1e-1} : new double[] {10, 100, 1000};
    int best = -1;
    double bestDistance = Double.POSITIVE_INFINITY;
    for (int i = 0; i < factors.length; i++) {
      double mended = ec * factors[i];
      double distance = distance(mended, key);
      if (!limits.refuses(mended) && !limits.doubts(mended) && distance < bestDistance) {
        best = i;
        bestDistance = distance;
      }
    }
    boolean sure = limits.refuses(ec) || bestDistance < NEAR;
    return best >= 0 && sure
        ? Optional.of(names[best] + ", that is " + Rows.number(ec * factors[best]) + " dS/m")
        : Optional.empty();
  }

  private double distance(double mended, MethodKey key) {
    Double median = medians.get(key);
    return median == null ? 1 : Math.abs(Math.log(mended) - median);
  }
}
