package fieldsalt.surface.map;

import fieldsalt.surface.site.Grid;
import java.util.List;

/**
 * The surface on a grid, all arrays row by row from the north-west, one value a cell; NaN outside
 * the fields.
 *
 * @param fields names; {@code fieldOf} holds an index into it, -1 outside every field
 * @param median in the property's own unit (dS/m)
 * @param error standard error of ln ECe (of the value itself on the natural scale), micro-scale
 *     included
 * @param chance that the point is above its field's limit, 0 to 1
 * @param beyond cells whose drift lies outside the surveyed range (drawn hatched); may be empty
 */
public record SurfaceMap(
    Grid grid,
    List<String> fields,
    short[] fieldOf,
    float[] median,
    float[] error,
    float[] chance,
    java.util.BitSet beyond) {
  public SurfaceMap {
    fields = List.copyOf(fields);
  }
}
