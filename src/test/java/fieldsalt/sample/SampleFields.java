package fieldsalt.sample;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * The files of the invented ranches, text by name. {@code main} writes those that are committed
 * into {@code sample-fields/}; a test holds that they are what the generator makes.
 */
public final class SampleFields {
  public static final long RANCH_SEED = 2;
  public static final long SMALL_SEED = 3;
  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;
  private static final List<String> HEADERS =
      List.of(
          "na_meq_l", "ca_meq_l", "mg_meq_l", "sar", "ions_method", "cec_cmol_kg", "bulk_density");

  private SampleFields() {}

  /** Writes the committed samples, from the project's root. */
  public static void main(String[] args) {
    write(Path.of("sample-fields/ranch"), ranch(RANCH_SEED));
    write(Path.of("sample-fields/small"), small(SMALL_SEED));
  }

  /** A case folder of any seed: the three fields, blemishes included. */
  public static Map<String, String> ranch(long seed) {
    InventedRanch ranch = InventedRanch.ofThree(seed);
    return new TreeMap<>(
        Map.of(
            "fields.geojson", fields(ranch.fields()),
            "samples.csv", table(Blemishes.of(ranch)),
            "survey.csv", survey(ranch),
            "job.yaml", resource("ranch-job.yaml")));
  }

  /** A case folder of the smallest job. */
  public static Map<String, String> small(long seed) {
    InventedRanch ranch = InventedRanch.ofOne(seed);
    return new TreeMap<>(
        Map.of(
            "fields.geojson", fields(ranch.fields()),
            "samples.geojson", points(ranch.rows()),
            "job.yaml", resource("small-job.yaml")));
  }

  public static void write(Path folder, Map<String, String> files) {
    try {
      Files.createDirectories(folder);
      for (Map.Entry<String, String> file : files.entrySet()) {
        Files.writeString(folder.resolve(file.getKey()), file.getValue());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String resource(String name) {
    try (var in = SampleFields.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String table(List<LabRow> rows) {
    String header =
        "id,lon,lat,depth_top_cm,depth_bottom_cm,method,reading,ec,unit,texture,lab,date,"
            + String.join(",", HEADERS);
    return header
        + "\n"
        + rows.stream().map(SampleFields::line).collect(Collectors.joining("\n"))
        + "\n";
  }

  private static String line(LabRow row) {
    double[] at = OpenSea.lonLat(row.place().xM(), row.place().yM());
    String other =
        HEADERS.stream().map(h -> row.other().getOrDefault(h, "")).collect(Collectors.joining(","));
    return String.join(
        ",",
        row.id(),
        degrees(at[0]),
        degrees(at[1]),
        whole(row.depth().topCm()),
        whole(row.depth().bottomCm()),
        row.method().label(),
        "extract",
        row.ec(),
        row.unit(),
        row.texture(),
        row.lab(),
        "2026-03-10",
        other);
  }

  private static String survey(InventedRanch ranch) {
    return "lon,lat,eca_mS_m\n"
        + ranch.survey().stream()
            .map(SampleFields::surveyLine)
            .collect(Collectors.joining("\n", "", "\n"));
  }

  private static String surveyLine(InventedRanch.SurveyPoint point) {
    double[] at = OpenSea.lonLat(point.place().xM(), point.place().yM());
    return degrees(at[0])
        + ","
        + degrees(at[1])
        + ","
        + String.format(Locale.ROOT, "%.1f", point.ecaMsPerM());
  }

  private static String degrees(double value) {
    return String.format(Locale.ROOT, "%.7f", value);
  }

  private static String whole(double value) {
    return String.valueOf(Math.round(value));
  }

  private static String fields(List<InventedField> fields) {
    ArrayNode features = JSON.arrayNode();
    for (InventedField field : fields) {
      ObjectNode properties = JSON.objectNode();
      properties.put("field", field.name()).put("crop", field.crop());
      features.add(feature(polygon(field.shapeM()), properties));
    }
    return collection(features);
  }

  private static String points(List<LabRow> rows) {
    ArrayNode features = JSON.arrayNode();
    for (LabRow row : rows) {
      double[] at = OpenSea.lonLat(row.place().xM(), row.place().yM());
      ObjectNode geometry = JSON.objectNode().put("type", "Point");
      geometry.set("coordinates", pair(at));
      ObjectNode properties = JSON.objectNode().put("id", row.id());
      properties.put("ec", Double.parseDouble(row.ec()));
      features.add(feature(geometry, properties));
    }
    return collection(features);
  }

  private static ObjectNode feature(ObjectNode geometry, ObjectNode properties) {
    ObjectNode feature = JSON.objectNode().put("type", "Feature");
    feature.set("properties", properties);
    feature.set("geometry", geometry);
    return feature;
  }

  private static String collection(ArrayNode features) {
    ObjectMapper mapper = new ObjectMapper();
    StringBuilder text = new StringBuilder("{\"type\": \"FeatureCollection\", \"features\": [\n");
    for (int i = 0; i < features.size(); i++) {
      text.append(written(mapper, features.get(i))).append(i + 1 < features.size() ? ",\n" : "\n");
    }
    return text.append("]}\n").toString();
  }

  private static String written(ObjectMapper mapper, JsonNode node) {
    try {
      return mapper.writeValueAsString(node);
    } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  private static ObjectNode polygon(Polygon shape) {
    ArrayNode rings = JSON.arrayNode();
    rings.add(ring(shape.getExteriorRing(), true));
    for (int i = 0; i < shape.getNumInteriorRing(); i++) {
      rings.add(ring(shape.getInteriorRingN(i), false));
    }
    ObjectNode geometry = JSON.objectNode().put("type", "Polygon");
    geometry.set("coordinates", rings);
    return geometry;
  }

  private static ArrayNode ring(LinearRing ring, boolean counterClockwise) {
    boolean same = Orientation.isCCW(ring.getCoordinates()) == counterClockwise;
    ArrayNode coordinates = JSON.arrayNode();
    for (Coordinate c : (same ? ring : ring.reverse()).getCoordinates()) {
      coordinates.add(pair(OpenSea.lonLat(c)));
    }
    return coordinates;
  }

  private static ArrayNode pair(double[] lonLat) {
    ArrayNode pair = JSON.arrayNode();
    for (double degrees : lonLat) {
      pair.add(new java.math.BigDecimal(degrees(degrees)).doubleValue());
    }
    return pair;
  }
}
