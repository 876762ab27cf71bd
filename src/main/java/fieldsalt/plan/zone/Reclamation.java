package fieldsalt.plan.zone;

import fieldsalt.facts.Hoffman1980.Application;
import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.word.Sentence;
import java.util.List;

/**
 * The one-off leaching that brings a zone to its target.
 *
 * @param mm water that must pass through the soil, over all futures
 * @param chance that the zone is above its target at all
 * @param plannedMm what the plan asks for; 0 where nothing is planned
 * @param targetEce dS/m
 * @param depthCm of soil
 * @param k of Hoffman 1980
 * @param lowConfidence about one pore volume or less: salt is displaced rather than washed out
 */
public record Reclamation(
    Status status,
    Odds mm,
    double chance,
    double plannedMm,
    double targetEce,
    double depthCm,
    double k,
    Application application,
    boolean lowConfidence,
    List<Sentence> sentences) {
  /** What came of it. */
  public enum Status {
    NEEDED,
    NOT_NEEDED,
    /** Prices say that it does not pay. */
    DOES_NOT_PAY,
    /** The target is at or below what the water itself leaves in the soil. */
    TARGET_OUT_OF_REACH
  }

  public Reclamation {
    sentences = List.copyOf(sentences);
  }

  public Reclamation unpaid(Sentence why) {
    List<Sentence> said = new java.util.ArrayList<>(sentences);
    said.add(why);
    return new Reclamation(
        Status.DOES_NOT_PAY,
        mm,
        chance,
        0,
        targetEce,
        depthCm,
        k,
        application,
        lowConfidence,
        said);
  }

  /** Volume of the planned depth over an area, m3. */
  public double plannedM3(double areaHa) {
    return plannedMm * areaHa * 10;
  }
}
