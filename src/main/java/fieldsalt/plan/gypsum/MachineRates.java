package fieldsalt.plan.gypsum;

import fieldsalt.plan.setting.PlanSettings;
import java.util.OptionalDouble;

/**
 * Rates that the spreader can do, so that rate x area adds up to the tonnes wanted.
 *
 * @param product t/ha in all passes, one a zone
 * @param passes one a zone
 * @param wantedT tonnes before the machine's steps
 * @param plannedT sum of rate x area
 */
public record MachineRates(double[] product, int[] passes, double wantedT, double plannedT) {
  /** Largest difference that is not worth a word. */
  private static final double SAID_FROM = 0.005;

  /** Rates are kept to ten kilograms where the machine names no step. */
  private static final double FINE_STEP = 0.01;

  /** Rounds the wanted rates (t/ha of product; 0 stays 0) of the zones of one field. */
  public static MachineRates of(double[] wanted, double[] areaHa, PlanSettings settings) {
    int n = wanted.length;
    int[] passes = new int[n];
    double[] product = new double[n];
    Spreader spreader = new Spreader(settings);
    for (int z = 0; z < n; z++) {
      passes[z] = Passes.of(wanted[z], settings);
      product[z] = passes[z] * spreader.nearest(passes[z] == 0 ? 0 : wanted[z] / passes[z]);
    }
    double wantedT = tonnes(wanted, areaHa);
    spreader.balance(product, passes, areaHa, wantedT);
    for (int z = 0; z < n; z++) {
      passes[z] = product[z] > 0 ? passes[z] : 0;
    }
    return new MachineRates(product, passes, wantedT, tonnes(product, areaHa));
  }

  static double tonnes(double[] rate, double[] areaHa) {
    double sum = 0;
    for (int z = 0; z < rate.length; z++) {
      sum += rate[z] * areaHa[z];
    }
    return sum;
  }

  /** Tonnes wanted, where the machine's steps do not allow them to half a percent. */
  public OptionalDouble unmetT() {
    boolean met = Math.abs(plannedT - wantedT) <= SAID_FROM * wantedT;
    return met ? OptionalDouble.empty() : OptionalDouble.of(wantedT);
  }

  /** What one pass can spread. */
  private record Spreader(double min, double max, double step) {
    Spreader(PlanSettings settings) {
      this(
          settings.machine().min().orElse(0),
          Math.min(
              settings.gypsum().capTPerHa(),
              settings.machine().max().orElse(Double.POSITIVE_INFINITY)),
          settings.machine().step().orElse(FINE_STEP));
    }

    private double least() {
      return Math.max(step, Math.ceil(min / step - 1e-9) * step);
    }

    private double most() {
      return Math.floor(max / step + 1e-9) * step;
    }

    /** The nearest rate of one pass; below half of the least, none. */
    double nearest(double rate) {
      if (rate < least() / 2 || most() < least()) {
        return 0;
      }
      double stepped = Math.rint(rate / step) * step;
      return Math.min(most(), Math.max(least(), stepped));
    }

    /** Moves single zones by a step while that brings the sum nearer to the tonnes wanted. */
    void balance(double[] product, int[] passes, double[] areaHa, double wantedT) {
      for (int round = 0; round < 400; round++) {
        double off = tonnes(product, areaHa) - wantedT;
        int best = -1;
        double bestOff = Math.abs(off) - 1e-9;
        for (int z = 0; z < product.length; z++) {
          double moved = product[z] - Math.signum(off) * step * passes[z];
          double newOff = Math.abs(off + (moved - product[z]) * areaHa[z]);
          if (newOff < bestOff && allowed(moved, passes[z])) {
            best = z;
            bestOff = newOff;
          }
        }
        if (best < 0) {
          return;
        }
        product[best] -= Math.signum(off) * step * passes[best];
      }
    }

    private boolean allowed(double product, int passes) {
      if (passes == 0) {
        return false;
      }
      double onePass = product / passes;
      return onePass >= least() - 1e-9 && onePass <= most() + 1e-9;
    }
  }
}
