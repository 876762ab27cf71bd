package fieldsalt.zones;

import fieldsalt.surface.SurfaceMap;
import java.util.List;
import org.locationtech.jts.geom.Geometry;

/** What tests measure on zones, each by another way than the product makes them. */
final class Measured {
  private Measured() {}

  private static Geometry opening(Geometry shape, double radius) {
    return shape.buffer(-radius, 16).buffer(radius, 16);
  }

  /**
   * Share of a zone that lies farther than half the width from its own opening by that radius, and
   * not where the field itself is narrower.
   */
  static double narrowShare(Geometry zone, Geometry field, double widthM) {
    double r = widthM / 2;
    Geometry far = zone.difference(opening(zone, r).buffer(r, 16));
    if (far.isEmpty()) {
      return 0;
    }
    Geometry narrowField = field.difference(opening(field, r));
    return far.difference(narrowField.buffer(0.01)).getArea() / zone.getArea();
  }

  /** Share of the cells whose zone has the class that the surface gives them. */
  static double keptShare(SurfaceMap map, List<Zone> zones, RandomCase given) {
    ZoneQuality where = new ZoneQuality(zones);
    int all = 0;
    int kept = 0;
    for (int i = 0; i < map.median().length; i++) {
      int column = i % map.grid().columns();
      int zone =
          map.fieldOf()[i] < 0
              ? -1
              : where.zoneAt(
                  map.grid().centreX(column),
                  map.grid().centreY((i - column) / map.grid().columns()));
      if (zone >= 0) {
        all++;
        kept += zones.get(zone).klass() == given.scheme().classOf(map.median()[i]) ? 1 : 0;
      }
    }
    return (double) kept / all;
  }
}
