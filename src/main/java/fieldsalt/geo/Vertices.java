package fieldsalt.geo;

import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.GeometryEditor;

/** Moves a geometry from one system to another, vertex by vertex. */
final class Vertices {
  private Vertices() {}

  /**
   * A copy with every vertex transformed; elevations are kept.
   *
   * @throws TransformException if a vertex has no image; its message names the vertex
   */
  static Geometry transform(Geometry from, MathTransform transform) throws TransformException {
    Move move = new Move(transform);
    Geometry to =
        new GeometryEditor(new GeometryFactory(from.getPrecisionModel())).edit(from, move);
    if (move.failure != null) {
      throw move.failure;
    }
    return to;
  }

  static double[] transform(double x, double y, MathTransform transform) throws TransformException {
    double[] at = {x, y};
    transform.transform(at, 0, at, 0, 1);
    if (!Double.isFinite(at[0]) || !Double.isFinite(at[1])) {
      throw new TransformException("no image of (" + x + ", " + y + ")");
    }
    return at;
  }

  private static final class Move extends GeometryEditor.CoordinateSequenceOperation {
    private final MathTransform transform;
    private TransformException failure;

    Move(MathTransform transform) {
      this.transform = transform;
    }

    @Override
    public CoordinateSequence edit(CoordinateSequence sequence, Geometry geometry) {
      CoordinateSequence moved = sequence.copy();
      for (int i = 0; i < moved.size() && failure == null; i++) {
        move(moved, i);
      }
      return moved;
    }

    private void move(CoordinateSequence moved, int i) {
      try {
        double[] at = Vertices.transform(moved.getX(i), moved.getY(i), transform);
        moved.setOrdinate(i, 0, at[0]);
        moved.setOrdinate(i, 1, at[1]);
      } catch (TransformException e) {
        failure =
            new TransformException(
                "vertex " + (i + 1) + " (" + moved.getX(i) + ", " + moved.getY(i) + ")", e);
      }
    }
  }
}
