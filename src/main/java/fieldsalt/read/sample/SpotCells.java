package fieldsalt.read.sample;

import fieldsalt.finding.Code;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.table.Columns;
import fieldsalt.read.table.LineCells;
import fieldsalt.read.table.Sheet;
import fieldsalt.read.word.DegreesText;
import java.util.Optional;
import java.util.OptionalDouble;

/** Takes coordinates out of the lines of a sheet. */
final class SpotCells {
  private final Sheet sheet;
  private final Columns columns;
  private final ReadingRules rules;
  private final LineCells cells;
  private final Notes notes;

  SpotCells(Sheet sheet, Columns columns, ReadingRules rules, LineCells cells, Notes notes) {
    this.sheet = sheet;
    this.columns = columns;
    this.rules = rules;
    this.cells = cells;
    this.notes = notes;
  }

  /** Where a line says it was taken; a bad coordinate is a finding and no place. */
  Optional<Spot> of(Sheet.Line line) {
    SourceRow source = sheet.source(line);
    if (line.point().isPresent()) {
      return checked(Spot.lonLat(line.point().get().getX(), line.point().get().getY()), source);
    }
    if (columns.has("lon") && columns.has("lat")) {
      String lon = columns.cell(line, "lon");
      String lat = columns.cell(line, "lat");
      return lon.isEmpty() && lat.isEmpty()
          ? Optional.empty()
          : spot(
              DegreesText.of(lon, cells.hasDecimalComma()),
              DegreesText.of(lat, cells.hasDecimalComma()),
              lon + ", " + lat,
              true,
              source);
    }
    String x = columns.cell(line, "x");
    String y = columns.cell(line, "y");
    return x.isEmpty() && y.isEmpty()
        ? Optional.empty()
        : spot(cells.number(line, "x"), cells.number(line, "y"), x + ", " + y, false, source);
  }

  private Optional<Spot> spot(
      OptionalDouble a, OptionalDouble b, String text, boolean degrees, SourceRow source) {
    if (a.isEmpty() || b.isEmpty()) {
      notes.row(
          Code.BAD_COORDINATE,
          source,
          "the coordinate '" + LineCells.shown(text) + "'",
          "the row has no place; write degrees (or metres with crs) as numbers");
      return Optional.empty();
    }
    return checked(new Spot(degrees, a.getAsDouble(), b.getAsDouble()), source);
  }

  private Optional<Spot> checked(Spot spot, SourceRow source) {
    if (!spot.degrees() || rules.isLocal()) {
      return Optional.of(new Spot(spot.degrees() && !rules.isLocal(), spot.a(), spot.b()));
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
          "the row has no place");
      return Optional.empty();
    }
    return Optional.of(spot);
  }
}
