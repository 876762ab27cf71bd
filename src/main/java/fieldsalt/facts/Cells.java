package fieldsalt.facts;

import java.util.OptionalDouble;

/** Cells of the tables: a number, or nothing. */
final class Cells {
  private Cells() {}

  static OptionalDouble number(String cell) {
    return cell == null || cell.isBlank()
        ? OptionalDouble.empty()
        : OptionalDouble.of(Double.parseDouble(cell));
  }
}
