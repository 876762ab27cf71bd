package fieldsalt.read.sample;

import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.read.file.Notes;
import fieldsalt.read.table.Columns;
import fieldsalt.read.table.LineCells;
import fieldsalt.read.table.Sheet;
import fieldsalt.read.word.Memo;
import fieldsalt.read.word.MethodWords;
import fieldsalt.read.word.NumberCell;
import fieldsalt.read.word.UnitText;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/** Ions of a line in meq/L, whatever unit their columns are in. */
final class IonCells {
  // equivalent masses in g per mole of charge, from IUPAC atomic masses
  private static final Map<String, Double> MG_PER_MEQ =
      Map.of(
          "na", 22.990, "ca", 20.039, "mg", 12.1525, "k", 39.098, "cl", 35.453, "so4", 48.03,
          "hco3", 61.017, "co3", 30.004);
  private static final Set<String> EXTRACTABLE = Set.of("mg/kg", "ppm", "meq/100g", "lb/ac");

  private final Sheet sheet;
  private final Columns columns;
  private final LineCells cells;
  private final Notes notes;
  private final Memo<String> methods = new Memo<>(IonCells::canonical);
  private final Memo<String> units = new Memo<>(u -> UnitText.of(u).orElse(""));
  private final Set<String> told = new HashSet<>();

  IonCells(Sheet sheet, Columns columns, LineCells cells, Notes notes) {
    this.sheet = sheet;
    this.columns = columns;
    this.cells = cells;
    this.notes = notes;
  }

  /** The ions of a line; their method is empty text where neither cell nor header says. */
  Ions read(Sheet.Line line) {
    List<String> atMost = new ArrayList<>();
    List<String> atLeast = new ArrayList<>();
    return new Ions(
        method(line),
        soluble(line, "na", atMost, atLeast),
        soluble(line, "ca", atMost, atLeast),
        soluble(line, "mg", atMost, atLeast),
        soluble(line, "k", atMost, atLeast),
        soluble(line, "cl", atMost, atLeast),
        soluble(line, "so4", atMost, atLeast),
        soluble(line, "hco3", atMost, atLeast),
        cells.limited(line, "b_mg_l", 1),
        ratio(line, "sar", atMost, atLeast),
        ratio(line, "esp_pct", atMost, atLeast),
        exchangeable(line),
        String.join(",", atMost),
        String.join(",", atLeast));
  }

  /** Carbonate, which few sheets give. */
  OptionalDouble carbonate(Sheet.Line line) {
    return soluble(line, "co3", new ArrayList<>(), new ArrayList<>());
  }

  private String method(Sheet.Line line) {
    String cell = columns.cell(line, "ions_method");
    if (!cell.isEmpty()) {
      return methods.of(cell);
    }
    for (String ion : List.of("na_meq_l", "ca_meq_l", "sar")) {
      var said = columns.get(ion).flatMap(c -> c.said().method());
      if (said.isPresent()) {
        return said.get().label();
      }
    }
    return "";
  }

  static String canonical(String word) {
    String plain = word.toLowerCase(java.util.Locale.ROOT);
    if (plain.matches(".*(extractable|exchange|acetate|mehlich|olsen|ammonium).*")) {
      return "extractable";
    }
    return MethodWords.parse(word).method().map(m -> m.label()).orElse(plain);
  }

  private String unit(String column) {
    return columns.has(column) ? units.of(columns.get(column).orElseThrow().unit()) : "";
  }

  private OptionalDouble soluble(
      Sheet.Line line, String ion, List<String> atMost, List<String> atLeast) {
    String column = ion + "_meq_l";
    if (!columns.has(column)) {
      return OptionalDouble.empty();
    }
    String unit = unit(column);
    if (EXTRACTABLE.contains(unit)) {
      extractable(column, unit, ion);
      return OptionalDouble.empty();
    }
    if (unit.isEmpty()) {
      assumed(column);
    }
    noteLimits(line, column, ion, atMost, atLeast);
    double factor = unit.equals("mg/l") ? 1 / MG_PER_MEQ.get(ion) : 1;
    return cells.limited(line, column, factor);
  }

  private OptionalDouble ratio(
      Sheet.Line line, String column, List<String> atMost, List<String> atLeast) {
    noteLimits(line, column, column, atMost, atLeast);
    return cells.limited(line, column, 1);
  }

  private void noteLimits(
      Sheet.Line line, String column, String name, List<String> atMost, List<String> atLeast) {
    switch (NumberCell.parse(columns.cell(line, column), cells.hasDecimalComma()).kind()) {
      case BELOW -> atMost.add(name);
      case ABOVE -> atLeast.add(name);
      default -> {}
    }
  }

  private void assumed(String column) {
    if (told.add(column)) {
      notes.finding(
          Code.ION_UNIT_MISSING,
          Place.file(where(column)),
          "a header without a unit",
          "taken as meq/L; write the unit into the header or name the column in the job");
    }
  }

  private void extractable(String column, String unit, String ion) {
    if (told.add(column)) {
      boolean sodium = ion.equals("na") && !unit.equals("lb/ac");
      notes.finding(
          Code.EXTRACTABLE_ION,
          Place.file(where(column)),
          unit + ": what the laboratory extracted from the soil, not what is in the water",
          sodium ? "kept as extractable sodium, not used for SAR" : "not used");
    }
  }

  private String where(String column) {
    return sheet.file()
        + " column '"
        + columns.get(column).map(c -> c.header().raw()).orElse(column)
        + "'";
  }

  private OptionalDouble exchangeable(Sheet.Line line) {
    String own = "na_exchangeable_cmol_kg";
    if (columns.has(own)) {
      boolean mgKg = Set.of("mg/kg", "ppm").contains(unit(own));
      return cells.limited(line, own, mgKg ? 1 / 229.90 : 1);
    }
    String unit = unit("na_meq_l");
    if (unit.equals("mg/kg") || unit.equals("ppm")) {
      return cells.limited(line, "na_meq_l", "na_exchangeable_cmol_kg", 1 / 229.90);
    }
    return unit.equals("meq/100g")
        ? cells.limited(line, "na_meq_l", "na_exchangeable_cmol_kg", 1)
        : OptionalDouble.empty();
  }
}
