package fieldsalt.plan.money;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Zone of 40 ha, 180 money per ha and dS/m, mean 4.6, sd 0.9, break-even 4.0 (worked out). */
class ValueOfInformationTest {
  @Test
  void certaintyAndSamples() {
    assertThat(ValueOfInformation.perfect(40, 180, 4.6, 0.9, 4.0)).isCloseTo(979, within(0.5));
    assertThat(ValueOfInformation.sampling(40, 180, 4.6, 0.9, 4.0, 0.3))
        .isCloseTo(192, within(0.5));
    assertThat(ValueOfInformation.sampling(40, 180, 4.6, 0.9, 4.0, 0.5))
        .isCloseTo(425, within(0.5));
    assertThat(ValueOfInformation.sampling(40, 180, 4.6, 0.9, 4.0, 0.8))
        .isCloseTo(766, within(0.5));
  }

  @Test
  void nothingToLearnNothingToGain() {
    assertThat(ValueOfInformation.perfect(40, 180, 4.6, 0, 4.0)).isZero();
    assertThat(ValueOfInformation.perfect(40, -180, 4.6, 0.9, 4.0))
        .isEqualTo(ValueOfInformation.perfect(40, 180, 4.6, 0.9, 4.0));
  }
}
