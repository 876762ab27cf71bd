package fieldsalt.report.markup;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.quantity.UnitSystem;
import fieldsalt.quantity.UnitSystem.Amount;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FiguresTest {
  private static final Figures METRIC = new Figures(UnitSystem.METRIC, "ECe", "dS/m");
  private static final Figures US = new Figures(UnitSystem.US, "ECe", "dS/m");

  @ParameterizedTest
  @CsvSource({
    "4.2468, 4.2",
    "0.04268, 0.043",
    "41.7, 42",
    "1234, '1,200'",
    "0, 0",
    "-0.0001, −0.00010",
    "10, 10",
    "9.96, 10",
    "0.0996, 0.10",
    "NaN, unknown"
  })
  void twoFigures(double value, String shown) {
    assertThat(Figures.twoFigures(value)).isEqualTo(shown);
  }

  @Test
  void intervalKeepsOnePlace() {
    assertThat(Figures.interval(3.06, 4.24, 5.61)).isEqualTo("4.2 (3.1 to 5.6)");
    assertThat(Figures.interval(0, 0, 3.2)).isEqualTo("0.0 (0.0 to 3.2)");
    assertThat(Figures.interval(9.9, 12.4, 15.2)).isEqualTo("12 (10 to 15)");
  }

  @Test
  void everyAmountHasItsUnit() {
    assertThat(METRIC.area(34.26)).isEqualTo("34\u00a0ha");
    assertThat(US.area(3.4)).isEqualTo("8.4\u00a0acres");
    assertThat(US.amount(3, 4, 5, Amount.RATE)).isEqualTo("1.8 (1.3 to 2.2)\u00a0tons/acre");
    assertThat(METRIC.value(5.43)).isEqualTo("5.4\u00a0dS/m");
  }

  @Test
  void chancesNeverPretendToBeCertain() {
    assertThat(Figures.chance(1)).isEqualTo("over\u00a099\u00a0%");
    assertThat(Figures.chance(0.997)).isEqualTo("over\u00a099\u00a0%");
    assertThat(Figures.chance(0.004)).isEqualTo("under\u00a01\u00a0%");
    assertThat(Figures.chance(0.634)).isEqualTo("63\u00a0%");
  }

  @Test
  void longNumbersAreSetInThrees() {
    assertThat(Figures.grouped("210000 m³ (9500 to 1234567), 0.12345"))
        .isEqualTo("210,000 m³ (9500 to 1,234,567), 0.12345");
    assertThat(Figures.grouped("540 (350-880) mm, rows 12-14"))
        .isEqualTo("540 (350 to 880) mm, rows 12-14");
  }

  @Test
  void aPropertyWithoutUnitHasNone() {
    assertThat(new Figures(UnitSystem.METRIC, "SAR", "").value(12.3)).isEqualTo("12");
  }
}
