package fieldsalt.handover.machine;

import fieldsalt.finding.InputProblem;
import fieldsalt.handover.table.Rounding;
import java.util.Locale;

/**
 * Rates as ISO 11783-11 numbers them: a data dictionary identifier with its unit and resolution,
 * and a value that fits a signed 32-bit integer.
 */
enum ProcessData {
  /** Setpoint volume per area application rate, 0.01 mm³/m²; 1 L/ha is 100 mm³/m². */
  VOLUME_PER_AREA(1, "L/ha", 10_000),
  /** Setpoint mass per area application rate, 1 mg/m²; 1 kg/ha is 100 mg/m². */
  MASS_PER_AREA(6, "kg/ha", 100);

  private final int identifier;
  private final String unit;
  private final double rawPerUnit;

  ProcessData(int identifier, String unit, double rawPerUnit) {
    this.identifier = identifier;
    this.unit = unit;
    this.rawPerUnit = rawPerUnit;
  }

  /** Four hexadecimal digits. */
  String ddi() {
    return String.format(Locale.ROOT, "%04X", identifier);
  }

  /**
   * The integer that a terminal reads.
   *
   * @param rate in {@code kg/ha} or {@code L/ha}, not negative
   * @throws InputProblem if it does not fit
   */
  int raw(double rate) {
    double raw = Math.rint(rate * rawPerUnit);
    if (!(raw >= 0 && raw <= Integer.MAX_VALUE)) {
      throw new InputProblem(
          "machine file",
          "a rate of " + Rounding.plain(rate, 1) + " " + unit,
          "at most " + Rounding.plain(Math.floor(Integer.MAX_VALUE / rawPerUnit), 0) + " " + unit,
          "Split it into several passes.");
    }
    return (int) raw;
  }
}
