package fieldsalt.plan.setting;

/** How a field is irrigated, with the usual application efficiency (FAO-type, from memory). */
public enum Irrigation {
  SURFACE(65, false),
  SPRINKLER(75, true),
  PIVOT(80, true),
  DRIP(90, false);

  private final double efficiencyPct;
  private final boolean overhead;

  Irrigation(double efficiencyPct, boolean overhead) {
    this.efficiencyPct = efficiencyPct;
    this.overhead = overhead;
  }

  public double usualEfficiencyPct() {
    return efficiencyPct;
  }

  /** Whether the soil is kept moist by many small waterings. */
  public boolean isFrequent() {
    return this == DRIP;
  }

  /** Whether the water wets the leaves. */
  public boolean isOverhead() {
    return overhead;
  }
}
