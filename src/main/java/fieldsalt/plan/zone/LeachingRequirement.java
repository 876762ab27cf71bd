package fieldsalt.plan.zone;

import fieldsalt.facts.AyersWestcot1985;
import fieldsalt.facts.Crop;
import fieldsalt.facts.Raats1975;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;

/**
 * The leaching that one crop under one water needs every season, the same in every zone: it rests
 * on what the crop tolerates, never on how salty a zone is.
 *
 * @param crop empty where none is given
 * @param asked fraction of the applied water that the rule asks for, be it feasible or not; empty
 *     where no fraction is enough or the requirement is not known
 * @param tolerableEce of the crop, dS/m; empty without numbers for the crop
 * @param ecWater of irrigation and rain together, dS/m; empty where not given
 * @param grossMm irrigation of the season; empty where not feasible or the season is not given
 * @param instead what would manage where the requirement is rarely practicable or not feasible
 */
public record LeachingRequirement(
    Status status,
    Optional<Crop> crop,
    OptionalDouble asked,
    OptionalDouble tolerableEce,
    OptionalDouble ecWater,
    OptionalDouble grossMm,
    Optional<Instead> instead) {
  /** Above this, leaching is rarely practicable (common practice). */
  public static final double RARELY = 0.30;

  /** Above this it is not feasible and no depth is printed (common practice). */
  public static final double NEVER = 0.50;

  /** Whether the requirement can be met. */
  public enum Status {
    PRACTICABLE("practicable"),
    RARELY_PRACTICABLE("rarely practicable"),
    NOT_FEASIBLE("not feasible"),
    UNKNOWN("not known");

    private final String label;

    Status(String label) {
      this.label = label;
    }

    public String label() {
      return label;
    }
  }

  /**
   * Another water or another crop.
   *
   * @param ecWater most EC at which leaching the crop is still practicable, dS/m
   * @param crops of those compared that manage with the water
   */
  public record Instead(double ecWater, List<Crop> crops) {
    public Instead {
      crops = List.copyOf(crops);
    }
  }

  /** Share of the applied water that must pass the root zone; empty where not feasible. */
  public OptionalDouble fraction() {
    return status == Status.NOT_FEASIBLE ? OptionalDouble.empty() : asked;
  }

  /** Mean ECe of the root zone that this water keeps at this fraction (FAO 29). */
  public OptionalDouble steadyEce() {
    return atFraction(AyersWestcot1985::meanEce);
  }

  /** Uptake-weighted mean EC of the soil water at this fraction (Raats 1975). */
  public OptionalDouble uptakeMean() {
    return atFraction(Raats1975::meanSoilWater);
  }

  private OptionalDouble atFraction(DoubleBinaryOperator rule) {
    return fraction().orElse(0) > 0
        ? OptionalDouble.of(rule.applyAsDouble(ecWater.orElseThrow(), asked.orElseThrow()))
        : OptionalDouble.empty();
  }
}
