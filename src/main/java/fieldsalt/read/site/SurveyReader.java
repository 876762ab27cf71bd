package fieldsalt.read.site;

import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.file.InputFile;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.file.TableRow;
import fieldsalt.read.sample.Placing;
import fieldsalt.read.sample.SpotCells;
import fieldsalt.read.table.ColumnNames;
import fieldsalt.read.table.Columns;
import fieldsalt.read.table.Sheet;
import fieldsalt.read.table.SheetCells;
import fieldsalt.read.word.HeaderText;
import fieldsalt.read.word.MethodWords;
import fieldsalt.read.word.NumberCell;
import fieldsalt.read.word.ReadingUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * An apparent-conductivity survey: readings in mS/m. What is not above 0 is left out; readings at
 * the very same place are averaged.
 */
public final class SurveyReader {
  private static final double UNUSUAL_MS_M = 600;
  private static final double LOW_MS_M = 5;

  private final SheetCells cells;
  private final Placing placing;
  private final Notes notes;

  private SurveyReader(SheetCells cells, Placing placing, Notes notes) {
    this.cells = cells;
    this.placing = placing;
    this.notes = notes;
  }

  /** The readings of a file in the ranch's projection, in its order. */
  public static List<SurveyReading> read(
      InputFile file, JobColumns columns, Placing placing, Notes notes) {
    Sheet sheet = columns.sheet(file, notes);
    SheetCells cells = columns.cells(sheet, new Notes(), notes);
    Optional<Columns.Column> eca = eca(sheet, cells.columns());
    if (eca.isEmpty() || !cells.hasPlaces()) {
      notes.problem(
          file.name(),
          eca.isEmpty() ? "no column of apparent conductivity" : "no coordinates",
          "columns lon, lat (or x, y with crs) and eca_mS_m",
          "Name your columns in the job: columns: {eca_mS_m: ...}.");
      return List.of();
    }
    return new SurveyReader(cells, placing, notes).readings(eca.get());
  }

  private static Optional<Columns.Column> eca(Sheet sheet, Columns columns) {
    if (columns.has("eca_ms_m")) {
      return columns.get("eca_ms_m");
    }
    for (int i = 0; i < sheet.headers().size(); i++) {
      HeaderText header = sheet.headers().get(i);
      if (ColumnNames.rank("eca_ms_m", header.name()) >= 0) {
        return Optional.of(new Columns.Column(i, header, MethodWords.parse("")));
      }
    }
    return columns.readings().stream().findFirst();
  }

  private List<SurveyReading> readings(Columns.Column eca) {
    double factor =
        ReadingUnit.of(eca.unit()).flatMap(ReadingUnit::ec).map(u -> u.dSPerM() * 100).orElse(1.0);
    SpotCells spots = new SpotCells(cells, placing.isLocal(), notes);
    Map<PlaceM, double[]> sums = new LinkedHashMap<>();
    double most = 0;
    int again = 0;
    for (TableRow row : cells.rows()) {
      SourceRow source = cells.source(row);
      NumberCell cell = cells.parsed(row.cell(eca.index()));
      Optional<PlaceM> place =
          isUsable(cell, source)
              ? spots.of(row).flatMap(spot -> placing.place(spot, source, notes))
              : Optional.empty();
      if (place.isPresent()) {
        double value = cell.value() * factor;
        most = Math.max(most, value);
        noteUnusual(value, source);
        double[] sum = sums.computeIfAbsent(place.get(), p -> new double[2]);
        again += sum[1] > 0 ? 1 : 0;
        sum[0] += value;
        sum[1]++;
      }
    }
    note(sums.size(), most, again);
    List<SurveyReading> readings = new ArrayList<>();
    sums.forEach((place, sum) -> readings.add(new SurveyReading(place, sum[0] / sum[1])));
    return readings;
  }

  private boolean isUsable(NumberCell cell, SourceRow source) {
    if (cell.kind() != NumberCell.Kind.NUMBER) {
      notes.row(Code.SURVEY_NO_NUMBER, source, "no number in the conductivity column", "left out");
      return false;
    }
    if (cell.value() <= 0) {
      notes.row(Code.SURVEY_NOT_POSITIVE, source, "a conductivity of 0 or less", "left out");
      return false;
    }
    return true;
  }

  private void noteUnusual(double value, SourceRow source) {
    if (value > UNUSUAL_MS_M) {
      notes.row(
          Code.UNUSUAL,
          source,
          "an apparent conductivity above " + (int) UNUSUAL_MS_M + " mS/m",
          "kept; check the unit");
    }
  }

  private void note(int places, double most, int again) {
    if (places == 0) {
      notes.problem(
          cells.file(),
          "no usable reading",
          "rows with a place and a conductivity above 0",
          "Check the columns lon, lat (or x, y) and eca_mS_m.");
    } else if (most < LOW_MS_M) {
      notes.finding(
          Code.SURVEY_UNIT,
          Place.file(cells.file()),
          "all values below " + (int) LOW_MS_M + " mS/m (are they in dS/m?)",
          "kept as mS/m; write the unit into the header, such as eca (dS/m)");
    }
    if (again > 0) {
      notes.finding(
          Code.SURVEY_SAME_PLACE,
          Place.file(cells.file()),
          again + " readings at exactly the place of another one",
          "averaged");
    }
  }
}
