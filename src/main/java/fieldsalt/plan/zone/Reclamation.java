package fieldsalt.plan.zone;

import fieldsalt.facts.Hoffman1980.Application;
import fieldsalt.plan.draw.Odds;

/**
 * The one-off leaching that brings a zone to its target.
 *
 * @param eceNow mean of the depth to reclaim as it is, dS/m
 * @param mm water that must pass through the soil, over all futures
 * @param chance that the zone is above its target at all
 * @param middleMm of the futures in which any is needed
 * @param targetEce dS/m
 * @param depthCm of soil
 * @param k of Hoffman 1980
 */
public record Reclamation(
    Status status,
    double eceNow,
    Odds mm,
    double chance,
    double middleMm,
    double targetEce,
    double depthCm,
    double k,
    Application application) {
  /** What came of it. */
  public enum Status {
    NEEDED,
    NOT_NEEDED,
    /** Prices say that it does not pay. */
    DOES_NOT_PAY,
    /** The target is at or below what the water itself leaves in the soil. */
    TARGET_OUT_OF_REACH
  }

  public Reclamation with(Status other) {
    return new Reclamation(other, eceNow, mm, chance, middleMm, targetEce, depthCm, k, application);
  }

  /** What the plan asks for; 0 where nothing is planned. */
  public double plannedMm() {
    return status == Status.NEEDED ? middleMm : 0;
  }

  /** Volume of the planned depth over an area, m3. */
  public double plannedM3(double areaHa) {
    return plannedMm() * areaHa * 10;
  }

  /**
   * Whether the depth asked for is about one pore volume or less, within a quarter of the least for
   * which the equation holds: salt is displaced rather than washed out.
   */
  public boolean lowConfidence() {
    boolean asked = status == Status.NEEDED || status == Status.DOES_NOT_PAY;
    return asked && middleMm > 0 && middleMm < 1.25 * k * depthCm * 10;
  }
}
