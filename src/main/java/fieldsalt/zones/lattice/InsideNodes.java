package fieldsalt.zones.lattice;

import java.util.Arrays;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/** Which nodes of a lattice lie inside a polygon: even-odd along each row. */
public final class InsideNodes {
  private final Lattice lattice;
  private final double[][] cuts;
  private final int[] cutCount;

  private InsideNodes(Lattice lattice) {
    this.lattice = lattice;
    cuts = new double[lattice.rows()][4];
    cutCount = new int[lattice.rows()];
  }

  public static boolean[] of(Lattice lattice, Geometry area) {
    return scan(lattice, area, false).fill();
  }

  /**
   * As {@code of}, but nodes on both sides of a slit of the outline that runs between neighbouring
   * nodes count as outside: otherwise ground would seem to go on through it.
   */
  public static boolean[] walled(Lattice lattice, Geometry area) {
    InsideNodes rows = scan(lattice, area, false);
    boolean[] inside = rows.fill();
    rows.slits((line, k) -> inside[line * lattice.columns() + k] = false);
    Lattice turned =
        new Lattice(
            -lattice.northM(),
            -lattice.westM(),
            lattice.stepM(),
            /* columns= */ lattice.rows(),
            /* rows= */ lattice.columns());
    scan(turned, area, true).slits((line, k) -> inside[k * lattice.columns() + line] = false);
    return inside;
  }

  private static InsideNodes scan(Lattice lattice, Geometry area, boolean turned) {
    InsideNodes scan = new InsideNodes(lattice);
    for (int g = 0; g < area.getNumGeometries(); g++) {
      Polygon polygon = (Polygon) area.getGeometryN(g);
      scan.ring(coordinates(polygon.getExteriorRing(), turned));
      for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
        scan.ring(coordinates(polygon.getInteriorRingN(h), turned));
      }
    }
    for (int row = 0; row < lattice.rows(); row++) {
      Arrays.sort(scan.cuts[row], 0, scan.cutCount[row]);
    }
    return scan;
  }

  /** Columns become rows, from the west on, each from the north on. */
  private static Coordinate[] coordinates(LinearRing ring, boolean turned) {
    Coordinate[] c = ring.getCoordinates();
    return turned
        ? Arrays.stream(c).map(p -> new Coordinate(-p.y, -p.x)).toArray(Coordinate[]::new)
        : c;
  }

  private interface NodeOnLine {
    void mark(int line, int k);
  }

  private void slits(NodeOnLine node) {
    for (int row = 0; row < lattice.rows(); row++) {
      for (int k = 1; k < cutCount[row]; k++) {
        int before = gap(cuts[row][k - 1]);
        if (before == gap(cuts[row][k]) && before >= 0 && before + 1 < lattice.columns()) {
          node.mark(row, before);
          node.mark(row, before + 1);
        }
      }
    }
  }

  private int gap(double x) {
    return (int) Math.floor((x - lattice.westM()) / lattice.stepM());
  }

  private void ring(Coordinate[] ring) {
    for (int i = 1; i < ring.length; i++) {
      boolean rising = ring[i - 1].y < ring[i].y;
      segment(rising ? ring[i - 1] : ring[i], rising ? ring[i] : ring[i - 1]);
    }
  }

  /** Rows with low.y <= y < high.y. */
  private void segment(Coordinate low, Coordinate high) {
    int first = (int) Math.max(0, Math.floor((lattice.northM() - high.y) / lattice.stepM()) - 1);
    int last =
        (int)
            Math.min(
                lattice.rows() - 1.0, Math.ceil((lattice.northM() - low.y) / lattice.stepM()) + 1);
    for (int row = first; row <= last; row++) {
      double y = lattice.northM() - row * lattice.stepM();
      if (low.y <= y && y < high.y) {
        add(row, low.x + (high.x - low.x) * (y - low.y) / (high.y - low.y));
      }
    }
  }

  private void add(int row, double x) {
    if (cutCount[row] == cuts[row].length) {
      cuts[row] = Arrays.copyOf(cuts[row], cutCount[row] * 2);
    }
    cuts[row][cutCount[row]++] = x;
  }

  private boolean[] fill() {
    boolean[] inside = new boolean[lattice.nodes()];
    for (int row = 0; row < lattice.rows(); row++) {
      for (int k = 0; k + 1 < cutCount[row]; k += 2) {
        fillRow(inside, row, cuts[row][k], cuts[row][k + 1]);
      }
    }
    return inside;
  }

  private void fillRow(boolean[] inside, int row, double west, double east) {
    double first = Math.max(0, Math.ceil((west - lattice.westM()) / lattice.stepM()));
    double end = Math.min(lattice.columns(), Math.ceil((east - lattice.westM()) / lattice.stepM()));
    if (first < end) {
      int start = row * lattice.columns();
      Arrays.fill(inside, start + (int) first, start + (int) end, true);
    }
  }
}
