package fieldsalt.read.sample;

import fieldsalt.facts.Plausibility;
import fieldsalt.quantity.EcUnit;
import fieldsalt.quantity.Method;
import fieldsalt.read.word.PlainText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What an odd EC most likely is: a number in another unit, or one whose decimal point slipped.
 *
 * @param what the unit, or the slip of the decimal point
 * @param unit to confirm
 * @param dSPerM what the number is then
 */
record UnitSlip(String what, EcUnit unit, double dSPerM) {
  private static final double NEAR_LN = Math.log(3);

  /**
   * The unit (or the place of the point) that makes a number usual, nearest to the file's others.
   *
   * @param raw the number as it is written
   * @param ds the number in the unit that it has, in dS/m
   * @param typical of the file's readings by the method, dS/m; empty where nothing is typical
   */
  static Optional<UnitSlip> of(double raw, double ds, Method method, OptionalDouble typical) {
    double middle = typical.orElse(method == Method.PASTE ? 3 : 0.8);
    UnitSlip best = null;
    for (UnitSlip slip : candidates(raw, ds)) {
      boolean fits = typical.isPresent() ? slip.far(middle) < NEAR_LN : slip.isUsual(method);
      if (fits && (best == null || slip.far(middle) < best.far(middle) - 1e-9)) {
        best = slip;
      }
    }
    return Optional.ofNullable(best);
  }

  private static List<UnitSlip> candidates(double raw, double ds) {
    List<UnitSlip> candidates = new ArrayList<>();
    for (EcUnit unit : EcUnit.values()) {
      candidates.add(new UnitSlip(unit.label(), unit, raw * unit.dSPerM()));
    }
    for (double factor : new double[] {10, 100, 1000}) {
      String by = PlainText.number(factor) + " times too ";
      candidates.add(new UnitSlip(by + "large", EcUnit.DS_PER_M, ds / factor));
      candidates.add(new UnitSlip(by + "small", EcUnit.DS_PER_M, ds * factor));
    }
    return candidates;
  }

  /** EC below which a reading by a method is odd, dS/m. */
  static double low(Method method) {
    return method == Method.PASTE ? 0.05 : 0.005;
  }

  private boolean isUsual(Method method) {
    return Plausibility.ofEc(method).isUsual(dSPerM) && dSPerM >= low(method);
  }

  private double far(double middle) {
    return Math.abs(Math.log(dSPerM / middle));
  }

  String inWords(double raw) {
    return what.equals(unit.label()) ? PlainText.number(raw) + " " + what : what;
  }
}
