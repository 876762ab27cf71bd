package fieldsalt.handover;

import fieldsalt.geo.PlaceM;
import fieldsalt.geo.Projections;
import fieldsalt.geo.RanchProjection;
import fieldsalt.handover.input.HandoverInput;
import fieldsalt.handover.input.MachineJob;
import fieldsalt.handover.input.SampleFeature;
import fieldsalt.handover.input.SurfaceLabels;
import fieldsalt.handover.input.ZoneFeature;
import fieldsalt.quantity.Texture;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.map.HeldMap;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.site.Grid;
import fieldsalt.zones.field.Zone;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

/**
 * An invented ranch of two fields for tests: one of two parts with a hole, cut into three zones,
 * one a plain square of two zones.
 */
public final class SmallRanch {
  public static final RanchProjection UTM = Projections.utmFor(-111.2, 32.9);
  public static final double X = 481_000;
  public static final double Y = 3_640_000;

  private SmallRanch() {}

  static Geometry wkt(String text) {
    try {
      Geometry shape = new WKTReader().read(text);
      shape.apply(
          (org.locationtech.jts.geom.CoordinateFilter)
              c -> {
                c.x += X;
                c.y += Y;
              });
      shape.geometryChanged();
      return shape;
    } catch (ParseException e) {
      throw new IllegalArgumentException(e);
    }
  }

  public static FieldBoundary field(String name, Geometry shape) {
    return new FieldBoundary(
        name, shape, Optional.of("alfalfa"), Texture.LOAM, OptionalDouble.empty());
  }

  public static HandoverInput of(String first, String second) {
    return of(UTM, first, second);
  }

  public static HandoverInput of(RanchProjection projection, String first, String second) {
    Zone low =
        new Zone(
            first + "-1",
            first,
            0,
            "below 2 dS/m",
            wkt(
                "MULTIPOLYGON(((0 0, 300 0, 300 400, 0 400, 0 0),(100 100, 100 150, 100 200, 200"
                    + " 200, 200 100, 150 100, 100 100)),((900 0, 1000 0, 1000 100, 900 0)))"));
    Zone high =
        new Zone(
            first + "-2",
            first,
            2,
            "4 to 8 dS/m",
            wkt("POLYGON((300 0, 600 0, 600 400, 300 400, 300 0))"));
    Zone hole =
        new Zone(
            first + "-3",
            first,
            1,
            "2 to 4 dS/m",
            wkt("POLYGON((100 100, 150 100, 150 150, 100 150, 100 100))"));
    Zone other =
        new Zone(
            second + "-1",
            second,
            0,
            "below 2 dS/m",
            wkt("POLYGON((0 500, 200 500, 200 700, 0 700, 0 500))"));
    Zone otherHigh =
        new Zone(
            second + "-2",
            second,
            1,
            "2 to 4 dS/m",
            wkt("POLYGON((200 500, 400 500, 400 700, 200 700, 200 500))"));
    List<Zone> zones = List.of(low, high, hole, other, otherHigh);
    List<FieldBoundary> fields =
        List.of(
            field(first, low.shapeM().union(high.shapeM()).union(hole.shapeM())),
            field(second, other.shapeM().union(otherHigh.shapeM())));
    Map<String, Double> rates = new LinkedHashMap<>();
    rates.put(high.name(), 5.0);
    rates.put(hole.name(), 2.5);
    rates.put(otherHigh.name(), 7.35);
    return new HandoverInput(
        projection,
        fields,
        features(zones),
        samples(fields),
        List.of(map(fields, 5)),
        HeldMap.of(List.of(map(fields, 5))),
        SurfaceLabels.ece("4 dS/m"),
        Optional.of(MachineJob.inOnePass("Sample & Sons", "Gypsum 92 %", 12, 4, rates)));
  }

  /** The same ranch with another job for the machine. */
  public static HandoverInput with(HandoverInput input, MachineJob job) {
    return new HandoverInput(
        input.projection(),
        input.fields(),
        input.zones(),
        input.samples(),
        input.maps(),
        input.rasters(),
        input.labels(),
        Optional.of(job));
  }

  /**
   * A field by itself.
   *
   * @param boxes its zones by name, metres from the ranch's corner
   */
  public static HandoverInput oneField(String name, Map<String, Envelope> boxes, MachineJob job) {
    GeometryFactory factory = new GeometryFactory();
    List<ZoneFeature> zones = new ArrayList<>();
    Envelope all = new Envelope();
    boxes.forEach(
        (zone, box) -> {
          Envelope placed =
              new Envelope(
                  X + box.getMinX(), X + box.getMaxX(), Y + box.getMinY(), Y + box.getMaxY());
          all.expandToInclude(placed);
          zones.add(
              new ZoneFeature(
                  new Zone(zone, name, 0, "low", factory.toGeometry(placed)), Map.of(), 1));
        });
    return new HandoverInput(
        UTM,
        List.of(field(name, factory.toGeometry(all))),
        zones,
        List.of(),
        List.of(),
        List.of(),
        SurfaceLabels.ece("4 dS/m"),
        Optional.of(job));
  }

  private static List<ZoneFeature> features(List<Zone> zones) {
    List<ZoneFeature> features = new ArrayList<>();
    for (int i = 0; i < zones.size(); i++) {
      Map<String, Object> figures = new LinkedHashMap<>();
      figures.put("ece_dS_m", 2.5 + i);
      figures.put("ece_low", 1.5 + i);
      figures.put("ece_high", 4.25 + i);
      figures.put("p_above", 0.1 * i);
      figures.put("yield_pct", i == 1 ? null : 100 - 5.5 * i);
      figures.put("gypsum_t_ha", i);
      figures.put("leach", i > 1);
      features.add(new ZoneFeature(zones.get(i), figures, 4));
    }
    return features;
  }

  private static List<SampleFeature> samples(List<FieldBoundary> fields) {
    List<SampleFeature> samples = new ArrayList<>();
    for (FieldBoundary field : fields) {
      Coordinate at = field.shapeM().getInteriorPoint().getCoordinate();
      Map<String, Object> figures = new LinkedHashMap<>();
      figures.put("ece_dS_m", 3.25);
      figures.put("relation", "1:5, \"medium\" & loam");
      figures.put("findings", null);
      samples.add(
          new SampleFeature("S-" + field.name(), field.name(), new PlaceM(at.x, at.y), figures));
    }
    return samples;
  }

  /** A slope from 1 dS/m in the west to 11 in the east, inside the fields. */
  public static SurfaceMap map(List<FieldBoundary> fields, double cellM) {
    Grid grid =
        new Grid(
            X - 20, Y + 720, cellM, (int) Math.ceil(1040 / cellM), (int) Math.ceil(740 / cellM));
    float[] median = new float[grid.cells()];
    float[] error = new float[grid.cells()];
    float[] chance = new float[grid.cells()];
    short[] fieldOf = new short[grid.cells()];
    GeometryFactory factory = new GeometryFactory();
    List<IndexedPointInAreaLocator> inside =
        fields.stream().map(f -> new IndexedPointInAreaLocator(f.shapeM())).toList();
    for (int i = 0; i < grid.cells(); i++) {
      Coordinate at =
          factory
              .createPoint(
                  new Coordinate(
                      grid.centreX(i % grid.columns()), grid.centreY(i / grid.columns())))
              .getCoordinate();
      fieldOf[i] = -1;
      for (short f = 0; f < inside.size(); f++) {
        if (inside.get(f).locate(at) != Location.EXTERIOR) {
          fieldOf[i] = f;
        }
      }
      boolean in = fieldOf[i] >= 0;
      median[i] = in ? (float) (1 + (at.x - X) / 100) : Float.NaN;
      error[i] = in ? 0.25f : Float.NaN;
      chance[i] = in ? (float) Math.min(1, (at.x - X) / 1000) : Float.NaN;
    }
    return new SurfaceMap(
        grid,
        fields.stream().map(FieldBoundary::name).toList(),
        fieldOf,
        median,
        error,
        chance,
        new BitSet());
  }
}
