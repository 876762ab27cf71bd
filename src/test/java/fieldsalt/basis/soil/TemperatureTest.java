package fieldsalt.basis.soil;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.facts.FactTable;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TemperatureTest {
  // Sheets & Hendrickx 1995 as corrected by Corwin & Lesch 2005, 2.00 dS/m at these temperatures
  @ParameterizedTest
  @CsvSource({
    "15, 2.498, 0.0005",
    "10, 2.827, 0.0005",
    "20, 2.225, 0.0005",
    "30, 1.811, 0.0005",
    "35, 1.655, 0.0005",
    "25, 1.9989, 0.00005"
  })
  void sheetsHendrickx(double celsius, double expected, double half) {
    assertThat(2.00 * Temperature.factor(celsius)).isCloseTo(expected, within(half));
  }

  // Handbook 60 (1954) table 15, from memory: the equation agrees within 0.45 % for 3-44 C and 1.05
  // %
  // at 47 C
  @Test
  void agreesWithHandbook60Table15() {
    int rows = 0;
    for (Map<String, String> row : FactTable.rows("handbook60_table15.csv")) {
      double celsius = Double.parseDouble(row.get("t_c"));
      double table = Double.parseDouble(row.get("factor"));
      double off = Math.abs(Temperature.factor(celsius) / table - 1);
      assertThat(off).as("%s C", celsius).isLessThan(celsius <= 44 ? 0.0045 : 0.0106);
      rows++;
    }
    assertThat(rows).isEqualTo(17);
  }

  // Handbook 60 table 15, from memory: factors at 15, 10, 20, 30, 35 C as the page prints them
  @ParameterizedTest
  @CsvSource({"15, 1.247", "10, 1.411", "20, 1.112", "30, 0.907", "35, 0.829"})
  void theTableIsKeptAsPrinted(String celsius, String factor) {
    assertThat(FactTable.rows("handbook60_table15.csv"))
        .anySatisfy(
            row -> {
              assertThat(row.get("t_c")).isEqualTo(celsius);
              assertThat(row.get("factor")).isEqualTo(factor);
            });
  }

  // Rayment & Lyons 2011, method 3A1: 2 % a degree is approximate; 2.00 dS/m at 15 C -> 2.40, which
  // lies 4 % below the equation used here
  @Test
  void theLinearRuleIsLowAtFifteenDegrees() {
    double linear = 2.00 * (1 + 0.02 * (25 - 15));
    assertThat(linear).isCloseTo(2.40, within(0.005));
    assertThat(linear / (2.00 * Temperature.factor(15))).isCloseTo(0.96, within(0.005));
  }

  @Test
  void nothingNearTwentyFiveIsCorrectedAndTheRangeIsThreeToFortySeven() {
    assertThat(Temperature.isStandard(24.5)).isTrue();
    assertThat(Temperature.isStandard(25.5)).isTrue();
    assertThat(Temperature.isStandard(24.4)).isFalse();
    assertThat(Temperature.isValid(2.9)).isFalse();
    assertThat(Temperature.isValid(3)).isTrue();
    assertThat(Temperature.isValid(47)).isTrue();
    assertThat(Temperature.isValid(47.1)).isFalse();
  }
}
