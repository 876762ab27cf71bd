package fieldsalt.plan.soil;

import fieldsalt.read.sample.Sample;
import fieldsalt.surface.Surface;
import fieldsalt.surface.area.AreaMeans;
import java.util.List;
import java.util.Optional;

/**
 * What the plan is made from.
 *
 * @param zones of the ranch, each with its points, in the order of the results
 * @param fields a ground for the field of every zone
 * @param ece surface of ln ECe, mean of the root zone
 * @param eceToReclaim surface of ln ECe, mean of the depth to reclaim; the root zone's where empty
 * @param samples rows as read, to find a zone's own texture and the sites that lack sodium
 * @param seed of the draws
 * @param eceMeans the zones' means of {@code ece} where the caller has them; worked out if empty
 */
public record PlanInput(
    List<ZoneGround> zones,
    List<FieldGround> fields,
    Surface ece,
    Optional<Surface> eceToReclaim,
    SoilProperties soil,
    List<Sample> samples,
    long seed,
    Optional<AreaMeans> eceMeans) {
  public PlanInput {
    zones = List.copyOf(zones);
    fields = List.copyOf(fields);
    samples = List.copyOf(samples);
  }

  /** Without zone means at hand. */
  public PlanInput(
      List<ZoneGround> zones,
      List<FieldGround> fields,
      Surface ece,
      Optional<Surface> eceToReclaim,
      SoilProperties soil,
      List<Sample> samples,
      long seed) {
    this(zones, fields, ece, eceToReclaim, soil, samples, seed, Optional.empty());
  }

  public FieldGround fieldOf(ZoneGround zone) {
    String name = zone.zone().field();
    return fields.stream()
        .filter(f -> f.field().equals(name))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no ground given for field " + name));
  }
}
