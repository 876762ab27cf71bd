package fieldsalt.handover.table;

import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;

/** A feature collection of RFC 7946, one feature a line, written as it goes. */
public final class GeoJsonWriter {
  private static final JsonFactory JSON = new JsonFactory();
  private final JsonGenerator out;
  private final boolean local;

  private GeoJsonWriter(JsonGenerator out, boolean local) {
    this.out = out;
    this.local = local;
  }

  /**
   * Writes a layer.
   *
   * @param features in rounded degrees, longitude first (metres if {@code local})
   * @param local whether the numbers are metres of a local system, which the file then says
   */
  public static void write(OutputStream to, List<Feature> features, boolean local)
      throws IOException {
    try (JsonGenerator generator = JSON.createGenerator(to, JsonEncoding.UTF8)) {
      new GeoJsonWriter(generator, local).collection(features);
    }
  }

  private void collection(List<Feature> features) throws IOException {
    out.writeStartObject();
    out.writeStringField("type", "FeatureCollection");
    if (local) {
      out.writeStringField(
          "coordinates_are", "metres of a local system, not longitude and latitude");
    }
    bbox(features);
    out.writeArrayFieldStart("features");
    for (Feature feature : features) {
      out.writeRaw("\n");
      feature(feature);
    }
    out.writeEndArray();
    out.writeEndObject();
    out.writeRaw("\n");
  }

  private void bbox(List<Feature> features) throws IOException {
    Envelope box = new Envelope();
    features.forEach(feature -> box.expandToInclude(feature.shape().getEnvelopeInternal()));
    if (!box.isNull()) {
      out.writeArrayFieldStart("bbox");
      position(new Coordinate(box.getMinX(), box.getMinY()));
      position(new Coordinate(box.getMaxX(), box.getMaxY()));
      out.writeEndArray();
    }
  }

  private void feature(Feature feature) throws IOException {
    out.writeStartObject();
    out.writeStringField("type", "Feature");
    out.writeFieldName("properties");
    properties(feature.properties());
    out.writeFieldName("geometry");
    geometry(feature.shape());
    out.writeEndObject();
  }

  private void properties(Map<String, Object> properties) throws IOException {
    out.writeStartObject();
    for (Map.Entry<String, Object> property : properties.entrySet()) {
      out.writeFieldName(property.getKey());
      value(property.getValue());
    }
    out.writeEndObject();
  }

  private void value(Object value) throws IOException {
    Object plain = Values.plain(value);
    if (plain == null) {
      out.writeNull();
    } else if (plain instanceof Boolean truth) {
      out.writeBoolean(truth);
    } else if (plain instanceof Long number) {
      out.writeNumber(number);
    } else if (plain instanceof Double number) {
      out.writeNumber(number);
    } else {
      out.writeString((String) plain);
    }
  }

  private void geometry(Geometry shape) throws IOException {
    if (shape.isEmpty()) {
      out.writeNull();
      return;
    }
    out.writeStartObject();
    out.writeStringField("type", shape.getGeometryType());
    out.writeFieldName("coordinates");
    coordinates(shape);
    out.writeEndObject();
  }

  private void coordinates(Geometry shape) throws IOException {
    if (shape instanceof Point) {
      at(shape.getCoordinate());
    } else if (shape instanceof Polygon polygon) {
      polygon(polygon);
    } else if (shape instanceof MultiPolygon) {
      out.writeStartArray();
      for (int i = 0; i < shape.getNumGeometries(); i++) {
        polygon((Polygon) shape.getGeometryN(i));
      }
      out.writeEndArray();
    } else {
      throw new IllegalArgumentException("no layer of ours holds a " + shape.getGeometryType());
    }
  }

  private void polygon(Polygon polygon) throws IOException {
    out.writeStartArray();
    ring(polygon.getExteriorRing());
    for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
      ring(polygon.getInteriorRingN(i));
    }
    out.writeEndArray();
  }

  private void ring(Geometry ring) throws IOException {
    out.writeStartArray();
    for (Coordinate at : ring.getCoordinates()) {
      at(at);
    }
    out.writeEndArray();
  }

  private void at(Coordinate at) throws IOException {
    out.writeStartArray();
    position(at);
    out.writeEndArray();
  }

  private void position(Coordinate at) throws IOException {
    out.writeNumber(Rounding.plain(at.x, Degrees.DECIMALS));
    out.writeNumber(Rounding.plain(at.y, Degrees.DECIMALS));
  }
}
