package fieldsalt.read.sample;

import fieldsalt.facts.EquivalentMass;
import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.quantity.Method;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.TableRow;
import fieldsalt.read.table.SheetCells;
import fieldsalt.read.word.MethodWords;
import fieldsalt.read.word.NumberCell;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/** Ions of a row in meq/L, whatever unit their columns are in. */
final class IonCells {
  private static final String SODIUM = "na_meq_l";
  private static final String EXCHANGEABLE = "na_exchangeable_cmol_kg";
  private static final double MG_PER_KG_OF_A_CMOL_OF_SODIUM = 229.90;
  private static final Set<String> EXTRACTABLE = Set.of("mg/kg", "ppm", "meq/100g", "lb/ac");
  private static final List<String> WITH_LIMITS =
      List.of("na", "ca", "mg", "k", "cl", "so4", "hco3", "sar", "esp_pct");

  private final SheetCells cells;
  private final Notes notes;
  private final Map<String, String> methods = new HashMap<>();
  private final Set<String> noted = new HashSet<>();

  IonCells(SheetCells cells, Notes notes) {
    this.cells = cells;
    this.notes = notes;
  }

  /** The ions of a row; their method is empty text where neither cell nor header names it. */
  Ions read(TableRow row) {
    return new Ions(
        method(row),
        soluble(row, "na"),
        soluble(row, "ca"),
        soluble(row, "mg"),
        soluble(row, "k"),
        soluble(row, "cl"),
        soluble(row, "so4"),
        soluble(row, "hco3"),
        cells.limited(row, "b_mg_l"),
        cells.limited(row, "sar"),
        cells.limited(row, "esp_pct"),
        exchangeable(row),
        names(row, NumberCell.Kind.BELOW),
        names(row, NumberCell.Kind.ABOVE));
  }

  private static String column(String ion) {
    return ion.equals("sar") || ion.equals("esp_pct") ? ion : ion + "_meq_l";
  }

  private String names(TableRow row, NumberCell.Kind kind) {
    return WITH_LIMITS.stream()
        .filter(ion -> !EXTRACTABLE.contains(cells.unit(column(ion))))
        .filter(ion -> cells.parsed(cells.text(row, column(ion))).kind() == kind)
        .collect(Collectors.joining(","));
  }

  private String method(TableRow row) {
    String cell = cells.text(row, "ions_method");
    if (!cell.isEmpty()) {
      return methods.computeIfAbsent(cell, IonCells::canonical);
    }
    return List.of(SODIUM, "ca_meq_l", "sar").stream()
        .flatMap(ion -> cells.columns().get(ion).flatMap(c -> c.stated().method()).stream())
        .findFirst()
        .map(Method::label)
        .orElse("");
  }

  static String canonical(String word) {
    String plain = word.toLowerCase(Locale.ROOT);
    if (plain.matches(".*(extractable|exchange|acetate|mehlich|olsen|ammonium).*")) {
      return "extractable";
    }
    Optional<Method> method = MethodWords.parse(word).method();
    return method.map(Method::label).orElse(plain);
  }

  private OptionalDouble soluble(TableRow row, String ion) {
    String column = column(ion);
    if (!cells.has(column)) {
      return OptionalDouble.empty();
    }
    String unit = cells.unit(column);
    if (EXTRACTABLE.contains(unit)) {
      noteExtractable(column, unit);
      return OptionalDouble.empty();
    }
    if (unit.isEmpty()) {
      noteUnitAssumed(column);
    }
    double factor = unit.equals("mg/l") ? 1 / EquivalentMass.mgPerMeq(ion) : 1;
    return cells.limited(row, column, column, factor);
  }

  private void noteUnitAssumed(String column) {
    if (noted.add(column)) {
      notes.finding(
          Code.ION_UNIT_MISSING,
          new Place.Column(cells.file(), cells.header(column)),
          "a header without a unit",
          "taken as meq/L; write the unit into the header or name the column in the job");
    }
  }

  private void noteExtractable(String column, String unit) {
    if (noted.add(column)) {
      boolean sodium = column.equals(SODIUM) && !unit.equals("lb/ac");
      notes.finding(
          Code.EXTRACTABLE_ION,
          new Place.Column(cells.file(), cells.header(column)),
          unit + ": what the laboratory extracted from the soil, not what its water holds",
          sodium ? "kept as extractable sodium, not used for SAR" : "not used");
    }
  }

  private OptionalDouble exchangeable(TableRow row) {
    String column = cells.has(EXCHANGEABLE) ? EXCHANGEABLE : SODIUM;
    String unit = cells.unit(column);
    if (unit.equals("mg/kg") || unit.equals("ppm")) {
      return cells.limited(row, column, EXCHANGEABLE, 1 / MG_PER_KG_OF_A_CMOL_OF_SODIUM);
    }
    return column.equals(EXCHANGEABLE) || unit.equals("meq/100g")
        ? cells.limited(row, column, EXCHANGEABLE, 1)
        : OptionalDouble.empty();
  }
}
