package fieldsalt.report;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.quantity.UnitSystem;
import fieldsalt.quantity.UnitSystem.Amount;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FiguresTest {
  @ParameterizedTest
  @CsvSource({
    "4.2468, 4.2",
    "0.04268, 0.043",
    "41.7, 42",
    "1234, '1,200'",
    "0, 0",
    "-0.0001, −0.00010",
    "10, 10",
    "9.96, 10.0",
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
    assertThat(new Figures(UnitSystem.METRIC).area(34.26)).isEqualTo("34\u00a0ha");
    assertThat(new Figures(UnitSystem.US).area(3.4)).isEqualTo("8.4\u00a0acres");
    assertThat(new Figures(UnitSystem.US).amount(3, 4, 5, Amount.RATE))
        .isEqualTo("1.8 (1.3 to 2.2)\u00a0tons/acre");
    assertThat(Figures.ece(5.43)).isEqualTo("5.4\u00a0dS/m");
  }

  @Test
  void chancesNeverPretendToBeCertain() {
    assertThat(Figures.percent(0.997)).isEqualTo("over\u00a099\u00a0%");
    assertThat(Figures.percent(0.004)).isEqualTo("under\u00a01\u00a0%");
    assertThat(Figures.percent(0.634)).isEqualTo("63\u00a0%");
  }
}
