package fieldsalt.plan.zone;

import fieldsalt.plan.word.Sentence;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The leaching that one crop under one water needs every season, the same in every zone: it rests
 * on what the crop tolerates, never on how salty a zone is.
 *
 * @param fraction of the applied water that must pass the root zone; empty where not feasible or
 *     not known
 * @param tolerableEce of the crop, dS/m; empty without numbers for the crop
 * @param ecWater of irrigation and rain together, dS/m
 * @param grossMm irrigation of the season; empty where not feasible or the season is not given
 * @param steadyEce mean ECe of the root zone that this water keeps at this fraction (FAO 29)
 * @param uptakeMean uptake-weighted mean EC of the soil water at this fraction (Raats 1975)
 */
public record LeachingRequirement(
    Status status,
    OptionalDouble fraction,
    OptionalDouble tolerableEce,
    OptionalDouble ecWater,
    OptionalDouble grossMm,
    OptionalDouble steadyEce,
    OptionalDouble uptakeMean,
    List<Sentence> sentences) {
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

  public LeachingRequirement {
    sentences = List.copyOf(sentences);
  }

  public static LeachingRequirement unknown(OptionalDouble tolerable, Sentence why) {
    OptionalDouble e = OptionalDouble.empty();
    return new LeachingRequirement(Status.UNKNOWN, e, tolerable, e, e, e, e, List.of(why));
  }
}
