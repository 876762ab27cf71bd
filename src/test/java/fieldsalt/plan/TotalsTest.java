package fieldsalt.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.plan.field.FieldPlan;
import fieldsalt.plan.setting.MachineSettings;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.zone.Reclamation;
import fieldsalt.plan.zone.ZonePlan;
import org.junit.jupiter.api.Test;

/** Every total of the plan against the sum of what its zones of 10 ha say. */
class TotalsTest {
  /** 1 mm over 1 ha is 10 m3: one zone of 10 ha takes 100 m3 for each planned millimetre. */
  @Test
  void waterOfTheRanchIsThatOfItsZone() {
    RanchPlan plan = Ranches.of(9).sar(3).plan(Ranches.drained());
    ZonePlan zone = plan.zones().get(0);
    assertThat(zone.reclamation().status()).isEqualTo(Reclamation.Status.NEEDED);
    double planned = zone.reclamation().plannedMm();
    assertThat(planned).isGreaterThan(300);
    assertThat(plan.leachingM3().p50()).isCloseTo(100 * planned, within(planned));
    assertThat(plan.fields().get(0).leachingM3()).isEqualTo(plan.leachingM3());
  }

  /** Expected amounts add up, whatever the zones share: the mean of a sum is the sum of means. */
  @Test
  void expectedWaterAddsUpOverZones() {
    double both = Ranches.of(9, 12).sar(3, 3).plan(Ranches.drained()).leachingM3().mean();
    RanchPlan plan = Ranches.of(9, 12).sar(3, 3).plan(Ranches.drained());
    double planned =
        plan.zones().stream().mapToDouble(z -> 100 * z.reclamation().plannedMm()).sum();
    assertThat(both / planned).as("mean of skewed amounts over their medians").isBetween(1.0, 1.2);
  }

  /** Rates in steps of 0.5 t/ha on 10 ha: 5 t a step. */
  @Test
  void tonnesAreRatesTimesHectares() {
    PlanSettings settings = Changed.withMachine(Ranches.drained(), MachineSettings.of(0.5, 8, 1));
    RanchPlan plan = Ranches.of(2, 2).sar(25, 30).cec(20, 20).plan(settings);
    double sum = 0;
    for (ZonePlan zone : plan.zones()) {
      assertThat(zone.productT()).isCloseTo(10 * zone.productTPerHa(), within(1e-9));
      sum += 10 * zone.productTPerHa();
    }
    FieldPlan field = plan.fields().get(0);
    assertThat(sum).isGreaterThan(50);
    assertThat(plan.plannedT()).isCloseTo(sum, within(1e-9));
    assertThat(field.plannedT()).isCloseTo(sum, within(1e-9));
    assertThat(plan.rates()).hasSize(2);
    double needed = plan.zones().stream().mapToDouble(z -> 10 * z.gypsum().product().mean()).sum();
    assertThat(plan.gypsumT().mean()).isCloseTo(needed, within(1e-6 * needed));
  }
}
