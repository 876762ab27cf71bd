package fieldsalt.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.quantity.UnitSystem.Amount;
import org.junit.jupiter.api.Test;

/**
 * Factors of NIST Special Publication 811 (2008), appendix B.8, all of them exact or printed so.
 */
class UnitSystemTest {
  @Test
  void usUnits() {
    assertThat(UnitSystem.US.of(1, Amount.LENGTH)).isCloseTo(1 / 0.3048, within(1e-12));
    assertThat(UnitSystem.US.of(25.4, Amount.WATER_DEPTH)).isCloseTo(1, within(1e-12));
    assertThat(UnitSystem.US.of(0.4046856, Amount.AREA)).isCloseTo(1, within(1e-6));
    assertThat(UnitSystem.US.of(1233.482, Amount.WATER_VOLUME)).isCloseTo(1, within(1e-6));
    assertThat(UnitSystem.US.of(0.9071847, Amount.MASS)).isCloseTo(1, within(1e-7));
    assertThat(UnitSystem.US.of(2.2417, Amount.RATE)).isCloseTo(1, within(1e-4));
    assertThat(UnitSystem.US.unit(Amount.RATE)).isEqualTo("tons/acre");
  }

  @Test
  void metricIsAsInside() {
    assertThat(UnitSystem.METRIC.of(3.7, Amount.RATE)).isEqualTo(3.7);
    assertThat(UnitSystem.METRIC.unit(Amount.WATER_VOLUME)).isEqualTo("m³");
  }
}
