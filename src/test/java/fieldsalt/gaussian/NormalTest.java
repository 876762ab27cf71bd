package fieldsalt.gaussian;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NormalTest {
  /**
   * Abramowitz and Stegun 1964, table 26.1 (P(x) to 15 decimals) and 26.2 (far tail, to 5 digits).
   */
  @ParameterizedTest
  @CsvSource({
    "0, 0.500000000000000, 1e-15",
    "1, 0.841344746068543, 1e-15",
    "2, 0.977249868051821, 1e-15",
    "-1, 0.158655253931457, 1e-15",
    "-3, 0.001349898031630, 1e-15",
    "-5, 2.8665e-7, 5e-12",
    "-10, 7.6199e-24, 5e-28"
  })
  void chancesBelow(double x, double chance, double half) {
    assertThat(Normal.below(x)).isCloseTo(chance, within(half));
    assertThat(Normal.above(-x)).isEqualTo(Normal.below(x));
  }

  @Test
  void bothBranchesMeetAtThree() {
    assertThat(Normal.below(-3.0000001)).isCloseTo(Normal.below(-3), within(1e-9));
    assertThat(Normal.below(Math.nextDown(-3.0)))
        .isCloseTo(Normal.below(-3), within(Math.ulp(0.5)));
  }

  /** Abramowitz and Stegun 1964, table 26.5: 1.281552, 1.644854, 2.326348 for 10, 5, 1 %. */
  @ParameterizedTest
  @CsvSource({"0.1, -1.281552", "0.95, 1.644854", "0.99, 2.326348", "0.5, 0"})
  void quantiles(double chance, double x) {
    assertThat(Normal.quantile(chance)).isCloseTo(x, within(5e-7));
  }

  @Test
  void quantileUndoesBelow() {
    for (double x = -8; x <= 5; x += 0.37) {
      assertThat(Normal.quantile(Normal.below(x))).isCloseTo(x, within(1e-9));
    }
    assertThat(Normal.quantile(0)).isEqualTo(Double.NEGATIVE_INFINITY);
    assertThatThrownBy(() -> Normal.quantile(1.1)).isInstanceOf(IllegalArgumentException.class);
  }

  /**
   * Unit normal loss, recomputed to six decimals from its definition (Raiffa and Schlaifer 1961).
   */
  @ParameterizedTest
  @CsvSource({"0, .398942", ".25, .286345", ".5, .197797", "1, .083315", "2, .008491"})
  void unitNormalLoss(double u, double loss) {
    assertThat(Normal.loss(u)).isCloseTo(loss, within(5e-7));
  }
}
