package fieldsalt.plan;

/** How often the spreader must go over the ground. */
final class Passes {
  private Passes() {}

  /** Passes for a product rate in t/ha: none exceeds the cap or what the machine can spread. */
  static int of(double product, PlanSettings settings) {
    double most = Math.min(settings.gypsum().capTPerHa(), settings.machine().max().orElse(1e9));
    return product <= 0 ? 0 : (int) Math.ceil(product / most - 1e-9);
  }
}
