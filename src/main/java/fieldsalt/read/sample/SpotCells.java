package fieldsalt.read.sample;

import fieldsalt.finding.Code;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.file.TableRow;
import fieldsalt.read.table.SheetCells;
import fieldsalt.read.word.DegreesText;
import fieldsalt.read.word.PlainText;
import java.util.Optional;
import java.util.OptionalDouble;

/** Takes ids and coordinates out of the rows of a sheet. */
public final class SpotCells {
  private final SheetCells cells;
  private final boolean local;
  private final Notes notes;

  /**
   * @param local whether coordinates are metres of no place on earth
   */
  public SpotCells(SheetCells cells, boolean local, Notes notes) {
    this.cells = cells;
    this.local = local;
    this.notes = notes;
  }

  /** The id that a row gives, else its place, else its number. */
  public String id(TableRow row, Optional<Spot> spot) {
    String id = cells.text(row, "id");
    return id.isEmpty() ? spot.map(Spot::toString).orElseGet(() -> cells.source(row).inFile()) : id;
  }

  /** Where a row was taken, by its cells; a bad coordinate is a finding and no place. */
  public Optional<Spot> of(TableRow row) {
    SourceRow source = cells.source(row);
    if (row.point().isPresent()) {
      return checked(Spot.lonLat(row.point().get().getX(), row.point().get().getY()), source);
    }
    boolean degrees = cells.has("lon") && cells.has("lat");
    String a = cells.text(row, degrees ? "lon" : "x");
    String b = cells.text(row, degrees ? "lat" : "y");
    if (a.isEmpty() && b.isEmpty()) {
      return Optional.empty();
    }
    return degrees
        ? spot(degrees(a), degrees(b), a + ", " + b, true, source)
        : spot(cells.number(row, "x"), cells.number(row, "y"), a + ", " + b, false, source);
  }

  private OptionalDouble degrees(String text) {
    return DegreesText.of(text, cells.hasDecimalComma());
  }

  private Optional<Spot> spot(
      OptionalDouble a, OptionalDouble b, String text, boolean degrees, SourceRow source) {
    if (a.isEmpty() || b.isEmpty()) {
      notes.row(
          Code.BAD_COORDINATE,
          source,
          "the coordinates '" + PlainText.cut(text) + "', which are not numbers",
          "the row has no coordinates; write degrees (or metres with crs) as numbers");
      return Optional.empty();
    }
    return checked(new Spot(degrees, a.getAsDouble(), b.getAsDouble()), source);
  }

  private Optional<Spot> checked(Spot spot, SourceRow source) {
    if (!spot.degrees() || local) {
      return Optional.of(new Spot(false, spot.a(), spot.b()));
    }
    boolean nowhere = spot.a() == 0 && spot.b() == 0;
    boolean outside = !(Math.abs(spot.a()) <= 180 && Math.abs(spot.b()) <= 90);
    if (nowhere || outside) {
      boolean swapped = Math.abs(spot.a()) <= 90 && Math.abs(spot.b()) <= 180;
      String why =
          nowhere
              ? " (a receiver without a fix)"
              : swapped ? " (latitude and longitude swapped?)" : " (metres? then x, y and crs)";
      notes.row(
          Code.BAD_COORDINATE,
          source,
          "longitude and latitude " + spot + why,
          "the coordinates are not used");
      return Optional.empty();
    }
    return Optional.of(spot);
  }
}
