package fieldsalt.handover.table;

import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;

/**
 * A layer in metres.
 *
 * @param name plain letters
 * @param what it holds, for people
 * @param points whether its shapes are points; else they are polygons or multipolygons
 */
public record Layer(String name, String what, boolean points, List<Feature> features) {
  public Layer {
    features = List.copyOf(features);
  }

  Envelope box() {
    Envelope box = new Envelope();
    features.forEach(feature -> box.expandToInclude(feature.shape().getEnvelopeInternal()));
    return box;
  }

  /** A polygon as a multipolygon of one part, so that a layer has one kind of shape. */
  static Geometry multi(Geometry shape) {
    GeometryFactory factory = shape.getFactory();
    return shape instanceof Polygon polygon
        ? factory.createMultiPolygon(new Polygon[] {polygon})
        : (MultiPolygon) shape;
  }
}
