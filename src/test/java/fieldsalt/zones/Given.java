package fieldsalt.zones;

import fieldsalt.classes.ClassScheme;
import fieldsalt.quantity.Texture;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.site.Grid;
import fieldsalt.zones.field.ZoneMap;
import fieldsalt.zones.field.ZoneSettings;
import fieldsalt.zones.lattice.InsideNodes;
import fieldsalt.zones.lattice.Lattice;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

/** Fields, surfaces and schemes for tests. */
public final class Given {
  private Given() {}

  public static Geometry wkt(String text) {
    try {
      return new WKTReader().read(text);
    } catch (ParseException e) {
      throw new IllegalArgumentException(e);
    }
  }

  public static FieldBoundary field(String name, Geometry shape) {
    return new FieldBoundary(
        name, shape, Optional.empty(), Texture.UNKNOWN, OptionalDouble.empty());
  }

  public static ClassScheme scheme(Double... breaks) {
    List<String> labels = new ArrayList<>();
    for (int k = 0; k <= breaks.length; k++) {
      labels.add("class " + k);
    }
    return new ClassScheme("test classes", Arrays.asList(breaks), labels, 4);
  }

  /** A map of one field: a value for each cell whose centre lies in it. */
  public static SurfaceMap map(FieldBoundary field, double cellM, DoubleBinaryOperator ece) {
    return map(List.of(field), cellM, ece);
  }

  public static SurfaceMap map(List<FieldBoundary> fields, double cellM, DoubleBinaryOperator ece) {
    Envelope box = new Envelope();
    fields.forEach(f -> box.expandToInclude(f.shapeM().getEnvelopeInternal()));
    double west = Math.floor(box.getMinX() / cellM) * cellM;
    double north = Math.ceil(box.getMaxY() / cellM) * cellM;
    Grid grid =
        new Grid(
            west,
            north,
            cellM,
            (int) Math.ceil((box.getMaxX() - west) / cellM),
            (int) Math.ceil((north - box.getMinY()) / cellM));
    short[] fieldOf = new short[grid.cells()];
    float[] median = new float[grid.cells()];
    float[] error = new float[grid.cells()];
    float[] chance = new float[grid.cells()];
    Arrays.fill(fieldOf, (short) -1);
    Arrays.fill(median, Float.NaN);
    Arrays.fill(error, Float.NaN);
    Arrays.fill(chance, Float.NaN);
    Lattice lattice =
        new Lattice(grid.centreX(0), grid.centreY(0), cellM, grid.columns(), grid.rows());
    for (int f = 0; f < fields.size(); f++) {
      boolean[] inside = InsideNodes.of(lattice, fields.get(f).shapeM());
      for (int i = 0; i < inside.length; i++) {
        if (inside[i]) {
          fieldOf[i] = (short) f;
          median[i] = (float) ece.applyAsDouble(lattice.x(i), lattice.y(i));
          error[i] = 0.3f;
          chance[i] = median[i] >= 4 ? 0.9f : 0.1f;
        }
      }
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

  public static ZoneMap zones(
      FieldBoundary field,
      double cellM,
      DoubleBinaryOperator ece,
      ClassScheme scheme,
      ZoneSettings settings) {
    return RanchZones.build(
        List.of(map(field, cellM, ece)), List.of(field), Map.of(field.name(), scheme), settings);
  }
}
