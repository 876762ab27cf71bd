package fieldsalt.surface.map;

import fieldsalt.finding.InputProblem;
import fieldsalt.read.field.FieldBoundary;
import java.util.List;
import java.util.Locale;
import org.locationtech.jts.geom.Envelope;

/** Which fields share a grid. */
public final class MapGrids {
  /** A ranch whose box holds more cells than this gets one grid a field. */
  private static final double MOST_CELLS = 50e6;

  /** All grids together. */
  private static final double MOST_IN_ALL = 100e6;

  /** Cells of all grids together that are held, 14 bytes each. */
  private static final double MOST_HELD = 1 << 22;

  private MapGrids() {}

  /** All fields together, or each by itself. */
  public static List<List<FieldBoundary>> groups(List<FieldBoundary> fields, double cellM) {
    if (cells(fields, cellM) <= MOST_CELLS) {
      return List.of(fields);
    }
    return fields.stream().map(List::of).toList();
  }

  /** Cells of the raster that are one in the map of a field, along one side. */
  public static int stepOf(FieldBoundary field, double cellM) {
    return step(cells(List.of(field), cellM));
  }

  /**
   * The same where the maps of all fields are held together.
   *
   * @throws InputProblem if there are more cells than a computer holds
   */
  public static int heldStep(List<FieldBoundary> fields, double cellM) {
    double all = fields.stream().mapToDouble(f -> cells(List.of(f), cellM)).sum();
    if (all > MOST_IN_ALL) {
      throw tooMany(fields, all, cellM);
    }
    return step(all);
  }

  private static int step(double cells) {
    return (int) Math.max(1, Math.ceil(Math.sqrt(cells / MOST_HELD)));
  }

  /** Of the box around some fields. */
  private static double cells(List<FieldBoundary> fields, double cellM) {
    Envelope box = new Envelope();
    fields.forEach(f -> box.expandToInclude(f.shapeM().getEnvelopeInternal()));
    return Math.ceil(box.getWidth() / cellM) * Math.ceil(box.getHeight() / cellM);
  }

  private static InputProblem tooMany(List<FieldBoundary> fields, double all, double cellM) {
    double least = cellM * Math.sqrt(all / MOST_IN_ALL);
    double rounded = Math.ceil(least * 20) / 20;
    return new InputProblem(
        "cell-m",
        String.format(
            Locale.ROOT,
            "%s m: %,.0f million cells over %d %s",
            Double.toString(cellM).replaceFirst("\\.0$", ""),
            all / 1e6,
            fields.size(),
            fields.size() == 1 ? "field" : "fields"),
        String.format(Locale.ROOT, "at most %.0f million cells", MOST_IN_ALL / 1e6),
        String.format(
            Locale.ROOT,
            "Take cell-m: %s or larger, or leave it at auto; no machine follows smaller cells.",
            rounded));
  }
}
