package fieldsalt.zones;

import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.zones.degree.LonLatZones;
import fieldsalt.zones.field.Zone;
import fieldsalt.zones.field.ZoneQuality;
import java.util.List;
import org.locationtech.jts.geom.Geometry;

/** What tests measure on zones, each by another way than the product makes them. */
public final class Measured {
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

  /** Zones and field in degrees: 1 m is about 1/111,320 of a degree of latitude. */
  public record Rounded(Geometry field, Geometry[] zones) {
    public Geometry union() {
      return org.locationtech.jts.coverage.CoverageUnion.union(zones);
    }
  }

  /** A projection for tests: by meridian and parallel, with a cross term as grids have. */
  static double[] lonLat(double x, double y) {
    double lat = y / 111_320;
    return new double[] {
      -114 + (x - 500_000) / (111_320 * Math.cos(Math.toRadians(lat))), lat + 1e-12 * x * y
    };
  }

  public static Rounded rounded(Geometry fieldM, List<Geometry> zonesM) {
    Geometry field = fieldM.copy();
    field.apply(
        (org.locationtech.jts.geom.CoordinateFilter)
            c -> {
              double[] p = lonLat(c.x, c.y);
              c.x = Math.round(p[0] * 1e7) / 1e7;
              c.y = Math.round(p[1] * 1e7) / 1e7;
            });
    List<Geometry> zones = LonLatZones.round(zonesM, fieldM, Measured::lonLat);
    return new Rounded(field, zones.toArray(Geometry[]::new));
  }

  /** The most decimals that a coordinate has when it is printed in full. */
  public static int decimals(Geometry[] shapes) {
    int most = 0;
    for (Geometry shape : shapes) {
      for (org.locationtech.jts.geom.Coordinate c : shape.getCoordinates()) {
        most = Math.max(most, new java.math.BigDecimal(Double.toString(c.x)).scale());
        most = Math.max(most, new java.math.BigDecimal(Double.toString(c.y)).scale());
      }
    }
    return most;
  }
}
