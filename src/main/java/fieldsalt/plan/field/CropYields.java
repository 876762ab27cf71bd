package fieldsalt.plan.field;

import fieldsalt.facts.Crop;
import java.util.List;
import java.util.Optional;

/**
 * What a crop would bring in every zone: percent of the same crop on good ground, not a ranking of
 * money.
 *
 * @param zonePct expected relative yield, one a zone in the order of the plan; empty for crops with
 *     a rating only
 * @param ranchPct mean by area; empty for crops with a rating only
 */
public record CropYields(Crop crop, List<Double> zonePct, Optional<Double> ranchPct) {
  public CropYields {
    zonePct = List.copyOf(zonePct);
  }
}
