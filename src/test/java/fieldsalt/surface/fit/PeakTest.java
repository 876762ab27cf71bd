package fieldsalt.surface.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class PeakTest {
  private int calls;

  private Peak peak(DoubleUnaryOperator function, double start) {
    calls = 0;
    DoubleUnaryOperator counted =
        x -> {
          calls++;
          return function.applyAsDouble(x);
        };
    return Peak.of(counted, start, -5, 5);
  }

  /** Top of x - e^x at 0, worth -1; of a parabola exactly. */
  @Test
  void findsTheTopInAFewSteps() {
    for (double start : new double[] {-5, -2, -0.1, 0.3, 4}) {
      Peak top = peak(x -> x - Math.exp(x), start);
      assertThat(top.at()).isCloseTo(0, within(0.01));
      assertThat(top.value()).isCloseTo(-1, within(0.01 * 0.01 / 2 * 1.01)); // curvature 1
      assertThat(calls).isLessThan(16);
    }
    assertThat(peak(x -> -(x - 1) * (x - 1), 0.7).at()).isCloseTo(1, within(1e-12));
  }

  @Test
  void staysInsideWhereTheTopIsAtABound() {
    assertThat(peak(x -> x, 0).at()).isBetween(4.98, 5.0);
    assertThat(peak(x -> -x, 0).at()).isBetween(-5.0, -4.98);
    assertThat(peak(x -> x, 5).at()).isEqualTo(5);
  }

  @Test
  void goesAroundWhereTheFunctionIsMinusInfinity() {
    Peak top = peak(x -> x < 0 ? Double.NEGATIVE_INFINITY : -Math.abs(x - 0.2), 1);
    assertThat(top.at()).isCloseTo(0.2, within(0.02));
  }

  @Test
  void aFlatFunctionIsLeftWhereItStarts() {
    assertThat(peak(x -> 3, 1).value()).isEqualTo(3);
    assertThat(calls).isLessThan(45);
  }
}
