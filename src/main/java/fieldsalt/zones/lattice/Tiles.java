package fieldsalt.zones.lattice;

/**
 * A lattice cut into squares that are worked on apart.
 *
 * @param halo nodes around a square on which what is worked out in it depends
 */
public record Tiles(Lattice lattice, int side, int halo) {
  private static final int LEAST_SIDE = 96;

  public static Tiles of(Lattice lattice, int halo) {
    return new Tiles(lattice, Math.max(LEAST_SIDE, 4 * halo), halo);
  }

  int across() {
    return (lattice.columns() + side - 1) / side;
  }

  public int count() {
    return across() * ((lattice.rows() + side - 1) / side);
  }

  public int firstRow(int tile) {
    return tile / across() * side;
  }

  public int firstColumn(int tile) {
    return tile % across() * side;
  }

  public int endRow(int tile) {
    return Math.min(lattice.rows(), firstRow(tile) + side);
  }

  public int endColumn(int tile) {
    return Math.min(lattice.columns(), firstColumn(tile) + side);
  }

  public interface Touched {
    void tile(int tile);
  }

  /** Every tile that depends on a node. */
  public void around(int row, int column, Touched touched) {
    int west = Math.max(0, column - halo) / side;
    int east = Math.min(lattice.columns() - 1, column + halo) / side;
    int south = Math.min(lattice.rows() - 1, row + halo) / side;
    for (int r = Math.max(0, row - halo) / side; r <= south; r++) {
      for (int c = west; c <= east; c++) {
        touched.tile(r * across() + c);
      }
    }
  }
}
