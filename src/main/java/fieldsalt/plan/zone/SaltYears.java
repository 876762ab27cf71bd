package fieldsalt.plan.zone;

import fieldsalt.plan.draw.Odds;
import java.util.List;
import java.util.OptionalInt;

/**
 * Mean ECe of a zone's root zone season by season, as the salt balance leaves it.
 *
 * @param planned after each season, with what the plan leaches at the beginning
 * @param untreated after each season, without the plan
 * @param undrained after the last season, with the plan, where water cannot leave
 * @param reached season after which the expected ECe is at or below the target, 0 for at once;
 *     empty where it is not within these seasons
 */
public record SaltYears(
    List<Odds> planned, List<Odds> untreated, Odds undrained, OptionalInt reached) {
  public SaltYears {
    planned = List.copyOf(planned);
    untreated = List.copyOf(untreated);
  }

  /** After the last season, with the plan. */
  public Odds last() {
    return planned.get(planned.size() - 1);
  }
}
