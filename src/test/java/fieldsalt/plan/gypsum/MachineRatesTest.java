package fieldsalt.plan.gypsum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.plan.Changed;
import fieldsalt.plan.setting.MachineSettings;
import fieldsalt.plan.setting.PlanSettings;
import java.util.Random;
import org.junit.jupiter.api.Test;

class MachineRatesTest {
  private static PlanSettings machine(double min, double max, double step) {
    return Changed.withMachine(PlanSettings.defaults(), MachineSettings.of(min, max, step));
  }

  @Test
  void withoutAMachineTheTonnesStay() {
    MachineRates rates =
        MachineRates.of(
            new double[] {4.234, 0, 7.77}, new double[] {10, 20, 5}, PlanSettings.defaults());
    assertThat(rates.plannedT()).isCloseTo(4.234 * 10 + 7.77 * 5, within(0.005 * 81));
    assertThat(rates.product()[1]).isZero();
    assertThat(rates.passes()).containsExactly(1, 0, 1);
    assertThat(rates.unmetT()).isEmpty();
  }

  @Test
  void everyPassIsAStepOfTheMachine() {
    PlanSettings settings = machine(1, 6, 0.5);
    MachineRates rates =
        MachineRates.of(
            new double[] {0.3, 0.7, 2.2, 9.1, 14}, new double[] {10, 12, 8, 15, 9}, settings);
    for (int z = 0; z < 5; z++) {
      if (rates.passes()[z] == 0) {
        assertThat(rates.product()[z]).isZero();
      } else {
        double onePass = rates.product()[z] / rates.passes()[z];
        assertThat(onePass).isBetween(1.0, 6.0);
        assertThat(onePass / 0.5).isCloseTo(Math.rint(onePass / 0.5), within(1e-9));
      }
    }
    assertThat(rates.passes()[4]).as("14 t/ha at 6 a pass").isEqualTo(3);
  }

  /** Sum of rate x area against the tonnes wanted: half a percent, or it is said. */
  @Test
  void tonnesAddUpOrItIsSaid() {
    Random random = new Random(1);
    int met = 0;
    for (int trial = 0; trial < 300; trial++) {
      int n = 1 + random.nextInt(8);
      double[] wanted = new double[n];
      double[] area = new double[n];
      for (int z = 0; z < n; z++) {
        wanted[z] = random.nextInt(4) == 0 ? 0 : 12 * random.nextDouble();
        area[z] = 0.4 + 20 * random.nextDouble();
      }
      MachineRates rates = MachineRates.of(wanted, area, machine(0.5, 8, 0.25));
      double sum = 0;
      for (int z = 0; z < n; z++) {
        sum += rates.product()[z] * area[z];
        assertThat(wanted[z] > 0 || rates.product()[z] == 0).isTrue();
      }
      assertThat(rates.plannedT()).isCloseTo(sum, within(1e-9));
      boolean near = Math.abs(sum - rates.wantedT()) <= 0.005 * rates.wantedT();
      met += near ? 1 : 0;
      assertThat(rates.unmetT().isEmpty()).isEqualTo(near);
    }
    assertThat(met).as("several zones nearly always meet it").isGreaterThan(200);
  }

  @Test
  void aMachineThatCannotSpreadSoLittleSaysSo() {
    MachineRates rates = MachineRates.of(new double[] {1.2}, new double[] {10}, machine(3, 9, 1));
    assertThat(rates.product()[0]).isZero();
    assertThat(rates.unmetT()).isPresent();
  }

  /** Cap of 10 t/ha a pass: 10.58 t/ha is split (agronomic rule of thumb). */
  @Test
  void aboveTheCapInPasses() {
    assertThat(Passes.of(10.58, PlanSettings.defaults())).isEqualTo(2);
    assertThat(Passes.of(10, PlanSettings.defaults())).isEqualTo(1);
    assertThat(Passes.of(0, PlanSettings.defaults())).isZero();
    assertThat(Passes.of(25, machine(1, 4, 0.5))).isEqualTo(7);
    assertThat(Passes.of(10.2, machine(1, 10, 0.5)))
        .as("a fifth of a ton is rounded off rather than driven twice")
        .isEqualTo(1);
    MachineRates rates =
        MachineRates.of(new double[] {10.2}, new double[] {5}, machine(1, 12, 0.5));
    assertThat(rates.product()).as("never above the cap").containsExactly(10.0);
  }
}
