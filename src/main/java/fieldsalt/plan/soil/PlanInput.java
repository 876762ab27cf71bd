package fieldsalt.plan.soil;

import fieldsalt.read.sample.Sample;
import fieldsalt.surface.Surface;
import fieldsalt.surface.area.JointMeans;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * What the plan is made from.
 *
 * @param zones by field, each zone with its points, in the order of the results
 * @param fields a ground for the field of every zone, in the order of the plan
 * @param ece surface of ln ECe, mean of the root zone
 * @param eceMeans a field's zone means of {@code ece}
 * @param eceToReclaim surface of ln ECe, mean of the depth to reclaim; the root zone's where empty
 * @param samples rows as read, by field, to find a zone's own texture and the sites that lack
 *     sodium
 * @param seed of the draws
 */
public record PlanInput(
    Map<String, List<ZoneGround>> zones,
    List<FieldGround> fields,
    Surface ece,
    Function<String, JointMeans> eceMeans,
    Optional<Surface> eceToReclaim,
    SoilProperties soil,
    Map<String, List<Sample>> samples,
    long seed) {
  public PlanInput {
    fields = List.copyOf(fields);
  }
}
