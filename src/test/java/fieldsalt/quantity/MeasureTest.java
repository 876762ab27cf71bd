package fieldsalt.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeasureTest {
  /**
   * International yard and pound agreement: 1 short ton/acre = 2.2417 t/ha, 1 inch = 25.4 mm, ...
   */
  @ParameterizedTest
  @CsvSource({
    "RATE, 2.2417, 1, 0.00005",
    "AREA, 1, 2.47105, 0.000005",
    "WATER_DEPTH, 25.4, 1, 1e-12",
    "VOLUME, 1233.48, 1, 0.00005",
    "SOIL_DEPTH, 15.24, 6, 1e-9",
    "MASS, 0.90718474, 1, 1e-12",
    "MONEY_PER_AREA, 100, 40.4686, 0.00005",
    "CONDUCTIVITY, 4, 4, 0"
  })
  void unitsOfTheUnitedStates(Dimension dimension, double metric, double us, double half) {
    assertThat(dimension.in(UnitSystem.US, metric)).isCloseTo(us, within(half));
    assertThat(dimension.in(UnitSystem.METRIC, metric)).isEqualTo(metric);
  }

  @Test
  void aRangeStandsBesideItsMiddle() {
    Measure rate = new Measure(4.234, 2.91, 6.07, Dimension.RATE);
    assertThat(rate.text(UnitSystem.METRIC)).isEqualTo("4.2 (2.9-6.1) t/ha");
    assertThat(rate.text(UnitSystem.US)).isEqualTo("1.9 (1.3-2.7) tons/acre");
  }

  @ParameterizedTest
  @CsvSource({"0, 0 mm", "104.6, 100 mm", "0.0004, 0 mm", "7.51, 7.5 mm", "1250, 1300 mm"})
  void noMoreDigitsThanDeserved(double mm, String text) {
    assertThat(Measure.of(mm, Dimension.WATER_DEPTH).text(UnitSystem.METRIC)).isEqualTo(text);
  }

  @Test
  void neverNotANumber() {
    assertThatThrownBy(() -> Measure.of(Double.NaN, Dimension.RATE))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
