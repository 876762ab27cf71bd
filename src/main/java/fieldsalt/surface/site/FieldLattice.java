package fieldsalt.surface.site;

import fieldsalt.geo.PlaceM;
import fieldsalt.read.field.FieldBoundary;
import java.util.ArrayList;
import java.util.List;

/** Places spread evenly over a field. */
public final class FieldLattice {
  private FieldLattice() {}

  /** About {@code count} places on a square lattice inside the field, at least one. */
  public static List<PlaceM> of(FieldBoundary field, int count) {
    double cell = Math.sqrt(field.shapeM().getArea() / count);
    FieldCells cells = FieldCells.ofOne(field, cell);
    List<PlaceM> places = new ArrayList<>();
    Grid grid = cells.grid();
    for (int c = 0; c < grid.cells(); c++) {
      if (cells.fieldOf()[c] >= 0) {
        places.add(new PlaceM(grid.centreX(c % grid.columns()), grid.centreY(c / grid.columns())));
      }
    }
    if (places.isEmpty()) {
      var inside = field.shapeM().getInteriorPoint();
      places.add(new PlaceM(inside.getX(), inside.getY()));
    }
    return places;
  }
}
