package fieldsalt.geo;

import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.GeometryEditor;

/** Moves a geometry from one system to another, vertex by vertex. */
final class Vertices {
  /** From one place to another. */
  @FunctionalInterface
  interface Mover {
    double[] move(double x, double y) throws TransformException;
  }

  private Vertices() {}

  /**
   * A copy with every vertex transformed; elevations are kept.
   *
   * @throws TransformException if a vertex has no image; its message names the vertex
   */
  static Geometry transform(Geometry from, MathTransform transform) throws TransformException {
    return transform(from, (x, y) -> transform(x, y, transform));
  }

  /** As above, by any rule. */
  static Geometry transform(Geometry from, Mover mover) throws TransformException {
    Edit edit = new Edit(mover);
    Geometry to =
        new GeometryEditor(new GeometryFactory(from.getPrecisionModel())).edit(from, edit);
    if (edit.failure != null) {
      throw edit.failure;
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

  private static final class Edit extends GeometryEditor.CoordinateSequenceOperation {
    private final Mover mover;
    private TransformException failure;

    Edit(Mover mover) {
      this.mover = mover;
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
        double[] at = mover.move(moved.getX(i), moved.getY(i));
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
