package fieldsalt.plan.soil;

import fieldsalt.surface.site.Target;
import fieldsalt.zones.field.Zone;
import java.util.List;

/**
 * A zone and the points, spread evenly over it, that stand for it.
 *
 * @param points up to a few hundred, at least one, in the zone's field
 */
public record ZoneGround(Zone zone, List<Target> points) {
  public ZoneGround {
    points = List.copyOf(points);
    if (points.isEmpty()) {
      throw new IllegalArgumentException("zone " + zone.name() + " has no point");
    }
  }
}
