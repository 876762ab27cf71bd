package fieldsalt.read.site;

import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.file.InputFile;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.Placing;
import fieldsalt.read.sample.ReadingRules;
import fieldsalt.read.sample.RowParser;
import fieldsalt.read.sample.Spot;
import fieldsalt.read.table.ColumnNames;
import fieldsalt.read.table.Columns;
import fieldsalt.read.table.LineCells;
import fieldsalt.read.table.Sheet;
import fieldsalt.read.table.SheetLayout;
import fieldsalt.read.word.HeaderText;
import fieldsalt.read.word.MethodWords;
import fieldsalt.read.word.NumberCell;
import fieldsalt.read.word.ReadingUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * An apparent-conductivity survey: readings in mS/m. What is not above 0 is dropped; readings at
 * the very same place are averaged.
 */
public final class SurveyReader {
  private static final double UNUSUAL_MS_M = 600;
  private static final double LOW_MS_M = 5;

  private final Sheet sheet;
  private final Columns columns;
  private final Notes notes;

  private SurveyReader(Sheet sheet, Columns columns, Notes notes) {
    this.sheet = sheet;
    this.columns = columns;
    this.notes = notes;
  }

  /** The readings of a file in the ranch's projection, in its order. */
  public static List<SurveyReading> read(
      InputFile file, JobDocument job, Placing placing, Set<String> mapped, Notes notes) {
    Sheet sheet = SheetLayout.read(file, SitesReader.allHeaders(job), notes);
    ReadingRules rules = new ReadingRules(job, Set.of(), true);
    Columns columns = Columns.of(sheet, rules.mapping(), new Notes());
    mapped.addAll(columns.mappedHeaders());
    Optional<Columns.Column> eca = eca(sheet, columns);
    boolean placed =
        sheet.lines().stream().anyMatch(l -> l.point().isPresent())
            || (columns.has("lon") && columns.has("lat"))
            || (columns.has("x") && columns.has("y"));
    if (eca.isEmpty() || !placed) {
      notes.problem(
          file.name(),
          eca.isEmpty() ? "no column of apparent conductivity" : "no coordinates",
          "columns lon, lat (or x, y with crs) and eca_mS_m",
          "Name your columns in the job: columns: {eca_mS_m: ...}.");
      return List.of();
    }
    return new SurveyReader(sheet, columns, notes).readings(eca.get(), rules, placing);
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

  private List<SurveyReading> readings(Columns.Column eca, ReadingRules rules, Placing placing) {
    double factor =
        ReadingUnit.of(eca.unit()).flatMap(ReadingUnit::ec).map(u -> u.dSPerM() * 100).orElse(1.0);
    LineCells cells = new LineCells(sheet, columns, notes);
    RowParser places = new RowParser(sheet, columns, rules, notes);
    Map<PlaceM, double[]> sums = new LinkedHashMap<>();
    double most = 0;
    int twice = 0;
    for (Sheet.Line line : sheet.lines()) {
      NumberCell cell = cells.cell(line, eca.index());
      SourceRow source = sheet.source(line);
      Optional<Spot> spot = isUsable(cell, source) ? places.place(line) : Optional.empty();
      Optional<PlaceM> place = spot.flatMap(s -> place(s, placing, source));
      if (place.isPresent()) {
        double value = cell.value() * factor;
        most = Math.max(most, value);
        tellUnusual(value, source);
        double[] sum = sums.computeIfAbsent(place.get(), p -> new double[2]);
        twice += sum[1] > 0 ? 1 : 0;
        sum[0] += value;
        sum[1]++;
      }
    }
    tell(sums.size(), most, twice);
    List<SurveyReading> readings = new ArrayList<>();
    sums.forEach((place, sum) -> readings.add(new SurveyReading(place, sum[0] / sum[1])));
    return readings;
  }

  private boolean isUsable(NumberCell cell, SourceRow source) {
    if (cell.kind() != NumberCell.Kind.NUMBER) {
      notes.row(Code.SURVEY_NO_NUMBER, source, "no number for conductivity", "dropped");
      return false;
    }
    if (cell.value() <= 0) {
      notes.row(Code.SURVEY_NOT_POSITIVE, source, "a conductivity of 0 or below", "dropped");
      return false;
    }
    return true;
  }

  private Optional<PlaceM> place(Spot spot, Placing placing, SourceRow source) {
    if (!spot.degrees() && !placing.knowsXy()) {
      notes.problem(
          source.file() + " columns x, y",
          "coordinates without a system",
          "their EPSG code, or local",
          "Say crs: EPSG:n (or crs: local) in the job.");
      return Optional.empty();
    }
    Optional<PlaceM> place = placing.place(spot);
    if (place.isEmpty()) {
      notes.row(Code.BAD_COORDINATE, source, "a place out of reach of the system", "dropped");
    }
    return place;
  }

  private void tellUnusual(double value, SourceRow source) {
    if (value > UNUSUAL_MS_M) {
      notes.row(
          Code.UNUSUAL,
          source,
          "an apparent conductivity above " + (int) UNUSUAL_MS_M + " mS/m",
          "kept; check the unit");
    }
  }

  private void tell(int places, double most, int twice) {
    if (places == 0) {
      notes.problem(
          sheet.file(),
          "no usable reading",
          "rows with a place and a conductivity above 0",
          "Check the columns lon, lat (or x, y) and eca_mS_m.");
    } else if (most < LOW_MS_M) {
      notes.finding(
          Code.SURVEY_UNIT,
          Place.file(sheet.file()),
          "all values below " + (int) LOW_MS_M + " mS/m (are they in dS/m?)",
          "kept as mS/m; write the unit into the header, such as eca (dS/m)");
    }
    if (twice > 0) {
      notes.finding(
          Code.SURVEY_SAME_PLACE,
          Place.file(sheet.file()),
          twice + " readings at the very place of another",
          "averaged");
    }
  }
}
