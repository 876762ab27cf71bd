package fieldsalt.read.file;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import fieldsalt.finding.InputProblem;
import fieldsalt.read.word.PlainText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;

/**
 * GeoJSON (RFC 7946): features with or without geometry, either ring order, a third coordinate
 * ignored, open rings closed. Anything else is a problem that names the feature.
 */
public final class GeoJson {
  private static final ObjectMapper JSON =
      new ObjectMapper().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final Pattern CODE = Pattern.compile("(?i)EPSG:(?::|[0-9.]*:)?(\\d+)$");

  private final String file;

  private GeoJson(String file) {
    this.file = file;
  }

  /** Whether a file is GeoJSON by its name or its first letter. */
  public static boolean isOne(InputFile file) {
    if (file.extension().equals("geojson") || file.extension().equals("json")) {
      return true;
    }
    for (byte b : Arrays.copyOf(file.bytes(), Math.min(file.bytes().length, 64))) {
      if (b == '{') {
        return true;
      }
      if (b > ' ') {
        return false;
      }
    }
    return false;
  }

  /** The features of a file. */
  public static GeoFeature.Collection read(InputFile input) {
    GeoJson reader = new GeoJson(input.name());
    JsonNode root = reader.parse(TextDecoding.decode(input));
    List<GeoFeature> features = new ArrayList<>();
    for (JsonNode node : reader.featureNodes(root)) {
      features.add(reader.feature(node, features.size() + 1));
    }
    return new GeoFeature.Collection(input.name(), features, reader.system(root));
  }

  private JsonNode parse(String text) {
    try {
      JsonNode root = JSON.readTree(text);
      if (root == null || !root.isObject()) {
        throw new InputProblem(
            file, "JSON that is not an object", "a GeoJSON FeatureCollection", "Export it again.");
      }
      return root;
    } catch (JacksonException e) {
      int line = e.getLocation() == null ? 0 : e.getLocation().getLineNr();
      throw new InputProblem(
              line > 0 ? file + " line " + line : file,
              "text that is not JSON (broken or cut off here)",
              "GeoJSON",
              "Export the file again; look for a missing bracket, quote or comma.")
          .because(e);
    }
  }

  private Iterable<JsonNode> featureNodes(JsonNode root) {
    String type = root.path("type").asText();
    if (type.equals("FeatureCollection") && root.path("features").isArray()) {
      return root.path("features");
    }
    if (type.equals("Feature") || root.has("coordinates") || root.has("geometries")) {
      return List.of(root);
    }
    throw new InputProblem(
        file,
        type.isEmpty() ? "an object without a type" : "type " + PlainText.cut(type),
        "a FeatureCollection with features",
        "Export it as GeoJSON.");
  }

  private Optional<String> system(JsonNode root) {
    String name = root.path("crs").path("properties").path("name").asText("");
    String plain = name.toUpperCase(Locale.ROOT);
    if (name.isEmpty() || plain.contains("CRS84") || plain.matches("WGS ?84")) {
      return Optional.empty();
    }
    Matcher code = CODE.matcher(name);
    if (!code.find()) {
      throw new InputProblem(
          file,
          "the coordinate system " + PlainText.cut(name),
          "WGS 84 longitude and latitude (RFC 7946), or an EPSG code",
          "Export it in WGS 84 (EPSG:4326).");
    }
    return code.group(1).equals("4326") ? Optional.empty() : Optional.of("EPSG:" + code.group(1));
  }

  private GeoFeature feature(JsonNode node, int number) {
    boolean bare = !node.path("type").asText().equals("Feature");
    JsonNode shape = bare ? node : node.path("geometry");
    boolean none = shape.isMissingNode() || shape.isNull();
    return new GeoFeature(
        number,
        none ? Optional.empty() : Optional.of(geometry(shape, file + " feature " + number)),
        bare ? Map.of() : properties(node));
  }

  private static Map<String, String> properties(JsonNode feature) {
    Map<String, String> all = new LinkedHashMap<>();
    for (Map.Entry<String, JsonNode> e : feature.path("properties").properties()) {
      if (!e.getValue().isNull()) {
        all.put(e.getKey(), e.getValue().isContainerNode() ? "" : e.getValue().asText().strip());
      }
    }
    if (!all.containsKey("id")
        && feature.path("id").isValueNode()
        && !feature.path("id").isNull()) {
      all.put("id", feature.path("id").asText().strip());
    }
    return all;
  }

  private Geometry geometry(JsonNode node, String where) {
    JsonNode at = node.path("coordinates");
    return switch (node.path("type").asText()) {
      case "Point" -> FACTORY.createPoint(coordinate(at, where));
      case "MultiPoint" ->
          FACTORY.createMultiPoint(
              parts(at, where, 0, "no list of coordinates")
                  .map(p -> FACTORY.createPoint(coordinate(p, where)))
                  .toArray(Point[]::new));
      case "LineString" -> FACTORY.createLineString(coordinates(at, where, 2));
      case "MultiLineString" -> FACTORY.createMultiLineString();
      case "Polygon" -> polygon(at, where);
      case "MultiPolygon" ->
          FACTORY.createMultiPolygon(
              parts(at, where, 0, "no list of coordinates")
                  .map(p -> polygon(p, where))
                  .toArray(Polygon[]::new));
      case "GeometryCollection" -> collection(node, where);
      default ->
          throw wrong(
              where, "the geometry type '" + PlainText.cut(node.path("type").asText()) + "'");
    };
  }

  private Geometry collection(JsonNode node, String where) {
    List<Geometry> parts = new ArrayList<>();
    for (JsonNode part : node.path("geometries")) {
      parts.add(geometry(part, where));
    }
    return FACTORY.createGeometryCollection(parts.toArray(Geometry[]::new));
  }

  private Stream<JsonNode> parts(JsonNode list, String where, int least, String wrong) {
    if (!list.isArray() || list.size() < least) {
      throw wrong(where, wrong);
    }
    return StreamSupport.stream(list.spliterator(), false);
  }

  private Polygon polygon(JsonNode rings, String where) {
    List<LinearRing> all =
        parts(rings, where, 1, "a polygon without rings")
            .map(ring -> Rings.ring(coordinates(ring, where, 3), where))
            .toList();
    return FACTORY.createPolygon(all.get(0), all.stream().skip(1).toArray(LinearRing[]::new));
  }

  private Coordinate[] coordinates(JsonNode list, String where, int least) {
    return parts(list, where, least, "a line or ring of " + list.size() + " points")
        .map(at -> coordinate(at, where))
        .toArray(Coordinate[]::new);
  }

  private Coordinate coordinate(JsonNode at, String where) {
    if (!at.isArray() || !isFinite(at.path(0)) || !isFinite(at.path(1))) {
      throw wrong(where, "the coordinate " + PlainText.cut(at.toString()));
    }
    return new Coordinate(at.get(0).doubleValue(), at.get(1).doubleValue());
  }

  private static boolean isFinite(JsonNode number) {
    return number.isNumber() && Double.isFinite(number.doubleValue());
  }

  private static InputProblem wrong(String where, String found) {
    return new InputProblem(
        where,
        found,
        "a GeoJSON Point, Polygon or MultiPolygon with [longitude, latitude] numbers",
        "Export the layer again as GeoJSON.");
  }
}
