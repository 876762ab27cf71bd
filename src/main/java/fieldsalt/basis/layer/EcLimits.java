package fieldsalt.basis.layer;

import fieldsalt.basis.soil.Rows;
import fieldsalt.facts.Plausibility;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.read.sample.Ec;
import fieldsalt.read.sample.Sample;
import java.util.Optional;

/**
 * Readings that their method cannot give: left out, with the unit that they look like. Readings
 * that only look odd among the others of their file are judged where the file is read.
 */
final class EcLimits {
  private static final String[] UNITS = {"uS/cm", "mS/m", "a decimal point slip of 10"};
  private static final double[] FACTORS = {1e-3, 1e-2, 1e-1};

  /** EC of good distilled water, dS/m; no extract of soil has less (common practice, no source). */
  private static final double PUREST_WATER_DS_M = 0.002;

  private EcLimits() {}

  /** The finding that leaves this row out; empty if its method can give it. */
  static Optional<Finding> check(Sample sample) {
    double ec = sample.ec().orElseThrow().dSPerM();
    boolean limit = sample.ec().orElseThrow().censored() != Ec.Censored.NO;
    if (ec > 0 && ec < PUREST_WATER_DS_M && !limit) {
      return Optional.of(
          Rows.finding(
              Code.EC_BELOW_WATER,
              sample,
              "EC " + Rows.number(ec) + " dS/m, less than distilled water has",
              "row left out; correct the cell or its unit, or write it as <limit"));
    }
    String method = sample.method().orElseThrow().label();
    Plausibility limits = Plausibility.of("ec_" + method);
    if (!limits.refuses(ec)) {
      return Optional.empty();
    }
    if (!(ec > 0)) {
      return Optional.of(
          Rows.finding(
              Code.EC_NOT_POSITIVE,
              sample,
              "EC " + Rows.number(ec) + " dS/m",
              "row left out; an EC is above 0: correct the cell or write it as <limit"));
    }
    return Optional.of(
        Rows.finding(
            Code.EC_IMPOSSIBLE,
            sample,
            "EC " + Rows.number(ec) + " dS/m by " + method,
            "row left out: the method cannot give more than "
                + Rows.number(limits.refuseAbove().orElse(Double.NaN))
                + " dS/m; confirm the unit, it looks like "
                + likely(ec, limits)));
  }

  /** The unit that brings the number nearest to what the method usually gives. */
  private static String likely(double ec, Plausibility limits) {
    double usual = limits.quantity().equals("ec_paste") ? 3 : 0.8;
    int best = 0;
    for (int i = 1; i < UNITS.length; i++) {
      best = far(ec * FACTORS[i], usual) < far(ec * FACTORS[best], usual) ? i : best;
    }
    return UNITS[best] + ", that is " + Rows.number(ec * FACTORS[best]) + " dS/m";
  }

  private static double far(double ec, double usual) {
    return Math.abs(Math.log(ec / usual));
  }
}
