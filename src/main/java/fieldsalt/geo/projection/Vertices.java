package fieldsalt.geo.projection;

import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.GeometryEditor;

/** Moves a geometry from one system to another, vertex by vertex. */
public final class Vertices {
  private Vertices() {}

  /**
   * A copy with every vertex moved; elevations are kept.
   *
   * @throws OutOfReach if a vertex has no image; its message names the vertex
   */
  public static Geometry move(Geometry from, Mover mover) {
    var edit =
        new GeometryEditor.CoordinateSequenceOperation() {
          @Override
          public CoordinateSequence edit(CoordinateSequence sequence, Geometry geometry) {
            return moved(sequence, mover);
          }
        };
    return new GeometryEditor(new GeometryFactory(from.getPrecisionModel())).edit(from, edit);
  }

  private static CoordinateSequence moved(CoordinateSequence sequence, Mover mover) {
    CoordinateSequence moved = sequence.copy();
    for (int i = 0; i < moved.size(); i++) {
      try {
        double[] at = mover.move(moved.getX(i), moved.getY(i));
        moved.setOrdinate(i, 0, at[0]);
        moved.setOrdinate(i, 1, at[1]);
      } catch (OutOfReach e) {
        String where = "(" + moved.getX(i) + ", " + moved.getY(i) + ")";
        throw new OutOfReach("vertex " + (i + 1) + " " + where, e);
      }
    }
    return moved;
  }
}
