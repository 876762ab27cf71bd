package fieldsalt.read.field;

import fieldsalt.finding.Code;
import fieldsalt.finding.InputProblem;
import fieldsalt.geo.Projections;
import fieldsalt.geo.SourceSystem;
import fieldsalt.quantity.Texture;
import fieldsalt.read.file.DatumShiftNote;
import fieldsalt.read.file.GeoFeature;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.SourceRow;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.operation.valid.IsValidOp;
import org.locationtech.jts.operation.valid.TopologyValidationError;

/** Field boundaries from a file, in degrees (in metres for a local system), each one checked. */
public final class FieldsReader {
  private static final double SAME = 1e-9;
  private static final double LEAST_M = 2;
  private static final List<String> NAMES =
      List.of("field", "name", "field_name", "fieldname", "field name", "label", "id");

  private static final List<String> ZONE_NAMES = List.of("zone", "name", "block", "label", "id");

  private final GeoFeature.Collection file;
  private final boolean zones;
  private final boolean local;
  private final Notes notes;
  private final FieldProperties properties;
  private final Set<String> names = new HashSet<>();
  private Optional<DatumShiftNote> shift = Optional.empty();

  private FieldsReader(GeoFeature.Collection file, boolean zones, boolean local, Notes notes) {
    this.file = file;
    this.zones = zones;
    this.local = local;
    this.notes = notes;
    this.properties = new FieldProperties(this::source, notes);
  }

  /**
   * The fields of a file.
   *
   * @param local whether coordinates are metres of no place on earth
   */
  public static List<FieldBoundary> read(GeoFeature.Collection file, boolean local, Notes notes) {
    return new FieldsReader(file, false, local, notes).fields();
  }

  /** Zones that the user gives, by their names; several may have one name. */
  public static List<FieldBoundary> zones(GeoFeature.Collection file, boolean local, Notes notes) {
    return new FieldsReader(file, true, local, notes).fields();
  }

  private List<FieldBoundary> fields() {
    Optional<SourceSystem> source = local ? Optional.empty() : file.system().map(this::source);
    shift = source.map(s -> new DatumShiftNote(file.file(), s));
    List<FieldBoundary> fields = new ArrayList<>();
    boolean wrong = false;
    for (GeoFeature feature : file.features()) {
      try {
        shape(feature, source).ifPresent(s -> fields.add(field(feature, s)));
      } catch (InputProblem e) {
        wrong = true;
        notes.problem(e);
      }
    }
    shift.ifPresent(s -> s.noteIn(notes));
    if (fields.isEmpty() && !wrong) {
      notes.problem(
          file.file(),
          file.features().isEmpty() ? "no feature" : "no polygon among its features",
          "at least one Polygon or MultiPolygon",
          "Draw the field's boundary as a polygon.");
    }
    return fields;
  }

  private SourceSystem source(String text) {
    try {
      return Projections.source(text);
    } catch (InputProblem e) {
      throw e.within(file.file());
    }
  }

  private Optional<Geometry> shape(GeoFeature feature, Optional<SourceSystem> source) {
    String where = file.where(feature) + named(feature);
    List<Geometry> parts = feature.geometry().map(FieldsReader::polygons).orElse(List.of());
    if (parts.isEmpty()) {
      notes.row(
          Code.NO_BOUNDARY,
          source(feature),
          feature.geometry().map(Geometry::getGeometryType).orElse("no geometry"),
          "not a field: left out");
      return Optional.empty();
    }
    Geometry whole = parts.get(0).getFactory().buildGeometry(parts);
    if (source.isEmpty() && !local) {
      checkDegrees(whole, where);
    }
    Geometry degrees = source.map(s -> moved(s, whole, where)).orElse(whole);
    if (local) {
      checkMetres(degrees, where);
    } else {
      checkMeridian(degrees, where);
    }
    Geometry sound = untouched(degrees);
    checkValid(sound, where);
    return Optional.of(sound);
  }

  private static List<Geometry> polygons(Geometry geometry) {
    List<Geometry> polygons = new ArrayList<>();
    PolygonExtracter.getPolygons(geometry, polygons);
    polygons.removeIf(Geometry::isEmpty);
    return polygons;
  }

  private Geometry moved(SourceSystem source, Geometry geometry, String where) {
    try {
      Geometry degrees = source.toLonLat(geometry);
      shift.ifPresent(s -> s.add(degrees.getEnvelopeInternal()));
      return degrees;
    } catch (InputProblem e) {
      throw e.within(where);
    } catch (IllegalArgumentException | ArithmeticException e) {
      // the registry's own way to say that a place lies beyond a projection
      throw new InputProblem(
              where,
              "a corner outside the area of " + source.name(),
              "coordinates in that system",
              "Check the system, or export in WGS 84 (EPSG:4326).")
          .because(e);
    }
  }

  private static void checkDegrees(Geometry shape, String where) {
    for (Coordinate c : shape.getCoordinates()) {
      if (Math.abs(c.x) <= 180 && Math.abs(c.y) <= 90) {
        continue;
      }
      boolean swapped = Math.abs(c.x) <= 90 && Math.abs(c.y) <= 180;
      boolean metres = Math.abs(c.x) > 1000 || Math.abs(c.y) > 1000;
      throw new InputProblem(
          where,
          "the corner " + place(c),
          "longitude (-180 to 180) first, latitude (-90 to 90) second, in degrees",
          swapped
              ? "Latitude and longitude look swapped: put longitude first."
              : metres
                  ? "These look like metres: export in WGS 84 (EPSG:4326), or as GeoPackage or"
                      + " Shapefile with its system."
                  : "Correct the longitude.");
    }
  }

  private static void checkMetres(Geometry shape, String where) {
    Envelope box = shape.getEnvelopeInternal();
    if (box.getWidth() < LEAST_M && box.getHeight() < LEAST_M) {
      throw new InputProblem(
          where,
          "a field of " + number(box.getWidth()) + " by " + number(box.getHeight()) + " m",
          "metres, as crs: local in the job says",
          "If these are degrees take crs: local out; if kilometres, write metres.");
    }
  }

  private static void checkMeridian(Geometry shape, String where) {
    Envelope box = shape.getEnvelopeInternal();
    if (box.getWidth() > 180) {
      throw new InputProblem(
          where,
          "longitudes from " + number(box.getMinX()) + " to " + number(box.getMaxX()),
          "a field that does not cross the 180th meridian",
          "Split it there into two fields, or correct a longitude with the wrong sign.");
    }
  }

  /**
   * A ring that touches itself at a corner without crossing encloses the same ground as one with a
   * hole or in two parts, as which it is taken; programs of other rules write it so.
   */
  private static Geometry untouched(Geometry shape) {
    TopologyValidationError error = new IsValidOp(shape).getValidationError();
    if (error == null || error.getErrorType() != TopologyValidationError.RING_SELF_INTERSECTION) {
      return shape;
    }
    Geometry fixed = GeometryFixer.fix(shape);
    boolean same = Math.abs(fixed.getArea() - shape.getArea()) <= SAME * shape.getArea();
    return same && fixed.getDimension() == 2 ? fixed : shape;
  }

  private void checkValid(Geometry shape, String where) {
    TopologyValidationError error = new IsValidOp(shape).getValidationError();
    if (error != null) {
      throw new InputProblem(
          where,
          "a boundary that is not valid: "
              + reason(error)
              + " at "
              + (local ? "x, y " : "longitude, latitude ")
              + place(error.getCoordinate()),
          "a boundary that does not cross or touch itself, with holes inside it",
          "Correct the boundary at this place in your GIS.");
    }
    if (!(shape.getArea() > 0)) {
      throw new InputProblem(where, "a boundary without area", "an area above 0", "Draw it again.");
    }
  }

  private static String reason(TopologyValidationError error) {
    return switch (error.getErrorType()) {
      case TopologyValidationError.SELF_INTERSECTION,
          TopologyValidationError.RING_SELF_INTERSECTION ->
          "it crosses or touches itself";
      case TopologyValidationError.HOLE_OUTSIDE_SHELL -> "a hole lies outside its boundary";
      case TopologyValidationError.NESTED_HOLES -> "a hole lies within a hole";
      case TopologyValidationError.NESTED_SHELLS -> "one part lies within another";
      case TopologyValidationError.DUPLICATE_RINGS -> "a ring is there twice";
      default -> error.getMessage().toLowerCase(Locale.ROOT);
    };
  }

  private static String place(Coordinate c) {
    return c == null ? "an unknown place" : number(c.x) + ", " + number(c.y);
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.7f", value)
        .replaceAll("(\\.\\d*?)0+$", "$1")
        .replaceAll("\\.$", "");
  }

  private SourceRow source(GeoFeature feature) {
    return new SourceRow(file.file(), feature.number(), "feature");
  }

  private String named(GeoFeature feature) {
    return name(feature).map(n -> " (" + n + ")").orElse("");
  }

  private Optional<String> name(GeoFeature feature) {
    return property(feature, zones ? ZONE_NAMES : NAMES);
  }

  /** The value of the first of these properties that a feature has, whatever their case. */
  static Optional<String> property(GeoFeature feature, List<String> names) {
    return names.stream()
        .flatMap(
            name ->
                feature.properties().entrySet().stream()
                    .filter(e -> e.getKey().strip().equalsIgnoreCase(name))
                    .map(Map.Entry::getValue)
                    .filter(value -> !value.isBlank()))
        .findFirst();
  }

  private FieldBoundary field(GeoFeature feature, Geometry shape) {
    if (zones) {
      String name = name(feature).orElse("zone " + feature.number());
      return new FieldBoundary(
          name, shape, Optional.empty(), Texture.UNKNOWN, OptionalDouble.empty());
    }
    return new FieldBoundary(
        unique(feature),
        shape,
        property(feature, List.of("crop")),
        properties.texture(feature),
        properties.clay(feature),
        properties.settings(feature));
  }

  private String unique(GeoFeature feature) {
    Optional<String> given = name(feature);
    String name = given.orElse("field " + feature.number());
    if (given.isEmpty()) {
      notes.row(
          Code.FIELD_UNNAMED,
          source(feature),
          "no property field or name",
          "called '" + name + "'");
    }
    String free = name;
    for (int i = 2; !names.add(free.toLowerCase(Locale.ROOT)); i++) {
      free = name + " (" + i + ")";
    }
    if (!free.equals(name)) {
      notes.row(
          Code.FIELD_NAME_TWICE,
          source(feature),
          "a second field called '" + name + "'",
          "called '" + free + "'; give each its own name, or join the parts to a MultiPolygon");
    }
    return free;
  }
}
