package fieldsalt.plan.gypsum;

import fieldsalt.plan.setting.PlanSettings;

/** How often the spreader must go over the ground. */
public final class Passes {
  private Passes() {}

  /**
   * Passes for a product rate in t/ha: none exceeds the cap or what the machine can spread. Half a
   * step more than that is rounded off rather than driven twice.
   */
  public static int of(double product, PlanSettings settings) {
    double most = Math.min(settings.gypsum().capTPerHa(), settings.machine().max().orElse(1e9));
    double spare = settings.machine().step().orElse(0) / 2;
    return product <= 0 ? 0 : (int) Math.max(1, Math.ceil((product - spare) / most - 1e-9));
  }
}
