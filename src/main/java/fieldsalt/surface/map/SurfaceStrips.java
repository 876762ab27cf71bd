package fieldsalt.surface.map;

import fieldsalt.surface.site.Grid;
import java.io.IOException;
import java.util.List;

/**
 * The surface on a grid, given out in strips of whole rows from the north to the south, so that
 * nobody has to hold a large one.
 */
public interface SurfaceStrips {
  /** Of all strips together. */
  Grid grid();

  /** Names of the fields, as in {@link SurfaceMap#fields}. */
  List<String> fields();

  /** Whether a cell may lie beyond the range of a drift; none does if not. */
  boolean mayExtrapolate();

  /**
   * Gives out every strip once.
   *
   * @throws IOException that the taker threw; the strips after it are not made
   */
  void forEach(Taker taker) throws IOException;

  /** Takes strips. */
  interface Taker {
    /**
     * The next strip.
     *
     * @param strip a map whose grid is a part of the whole, as wide as it
     */
    void take(SurfaceMap strip) throws IOException;
  }
}
