package fieldsalt.plan.leaching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.plan.Ranches;
import fieldsalt.plan.field.FieldPlan;
import fieldsalt.plan.setting.Blend;
import fieldsalt.plan.setting.PlanKeys;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.setting.WaterSettings;
import fieldsalt.plan.word.PlanWords;
import fieldsalt.plan.zone.SaltYears;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.quantity.UnitSystem;
import fieldsalt.read.job.JobDocument;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The steady state of FAO 29 table 3, mixes of two waters, and the salt balance by hand. */
class SaltOverTheYearsTest {
  private static WaterSettings water(String... sets) {
    return settings(sets).water();
  }

  private static PlanSettings settings(String... sets) {
    return PlanKeys.of(JobDocument.ofSettings(Path.of(""), List.of(sets)));
  }

  /** Ayers and Westcot 1985, FAO 29 rev. 1, table 3: ECe = X x ECw, as printed to one decimal. */
  @ParameterizedTest
  @CsvSource({"0.05, 3.2", "0.10, 2.1", "0.15, 1.6", "0.20, 1.3", "0.25, 1.2", "0.30, 1.0"})
  void concentrationFactorsOfTheTable(double fraction, double x) {
    SteadyState steady =
        SteadyState.of(water("water.ec-dS-m=1", "water.leaching-fraction=" + fraction))
            .orElseThrow();
    assertThat(steady.source()).isEqualTo(SteadyState.Source.GIVEN);
    assertThat(steady.ece()).isCloseTo(x, within(0.051));
  }

  /** 1,000 mm of 2 dS/m with 250 mm of rain, of which the crop uses 1,000: 20 % drains. */
  @Test
  void theFractionOfASeasonAndTheRainInIt() {
    SteadyState steady =
        SteadyState.of(
                water(
                    "water.ec-dS-m=2",
                    "water.applied-mm=1000",
                    "water.rain-mm=250",
                    "water.season-et-mm=1000"))
            .orElseThrow();
    assertThat(steady.source()).isEqualTo(SteadyState.Source.FROM_BALANCE);
    assertThat(steady.fraction()).isCloseTo(0.2, within(1e-12));
    assertThat(steady.drainedMm().orElseThrow()).isCloseTo(250, within(1e-9));
    assertThat(steady.ecIn()).isCloseTo((2 * 1000 + 0.02 * 250) / 1250, within(1e-12));
    assertThat(steady.ece() / steady.withoutRain()).isCloseTo(steady.ecIn() / 2, within(1e-12));
  }

  @Test
  void whatIsNotKnownIsTakenAndSaid() {
    assertThat(SteadyState.of(water("water.sar=3"))).isEmpty();
    FieldPlan field =
        Ranches.of(3).plan(settings("water.ec-dS-m=1", "water.sar=3")).fields().get(0);
    SteadyState steady = field.steady().orElseThrow();
    assertThat(steady.fraction()).isEqualTo(0.15);
    assertThat(text(field, settings("water.ec-dS-m=1")))
        .contains("about ECe 1.6 dS/m, at a leaching fraction of 15 %")
        .contains("taken, because neither it nor what is applied is given");
    assertThat(field.zones().get(0).years()).as("nothing says what passes the soil").isEmpty();
  }

  private static String text(FieldPlan field, PlanSettings settings) {
    return new PlanWords(settings)
        .of(field).stream()
            .map(s -> s.text(UnitSystem.METRIC))
            .collect(Collectors.joining("\n"))
            .replace('\u00a0', ' ');
  }

  /** Mixes: salts add up; with no sodium in one water, half of the sodium is left of the other. */
  @Test
  void mixesOfTwoWaters() {
    assertThat(Blend.ec(4, 1, 0.25)).isCloseTo(3.25, within(1e-12));
    assertThat(Blend.sar(2, 6, 2, 6, 0.4)).isCloseTo(6, within(1e-9));
    // C = 20 meq/L, SAR 6: Na = 6 sqrt((20 - Na)/2), Na = 11.90; half of it in 20 meq/L
    double sodium = 9 * (Math.sqrt(1 + 160.0 / 36) - 1);
    assertThat(sodium).isCloseTo(6 * Math.sqrt((20 - sodium) / 2), within(1e-9));
    assertThat(Blend.sar(2, 6, 2, 0, 0.5))
        .isCloseTo(sodium / 2 / Math.sqrt((20 - sodium / 2) / 2), within(1e-9));
    assertThat(new Blend(0.5, OptionalDouble.empty(), OptionalDouble.empty(), 3).shareFor(2))
        .hasValue(0.4);
    assertThat(new Blend(2.5, OptionalDouble.empty(), OptionalDouble.empty(), 3).shareFor(2))
        .isEmpty();
    WaterSettings mixed =
        water(
            "water.ec-dS-m=3",
            "water.sar=8",
            "water.cl=20",
            "water.blend-with.ec-dS-m=1",
            "water.blend-with.sar=2",
            "water.blend-with.share-pct=50");
    assertThat(mixed.ecDsPerM()).hasValue(2);
    assertThat(mixed.sar().orElseThrow()).isBetween(2.0, 8.0);
    assertThat(mixed.ions().cl()).as("of the mix nobody knows it").isEmpty();
  }

  /** Lettuce stands little: of 3 dS/m and 0.5 dS/m the page says how much of the better water. */
  @Test
  void theShareThatTheCropNeedsIsSaid() {
    PlanSettings settings = settings("water.ec-dS-m=3", "water.blend-with.ec-dS-m=0.5");
    FieldPlan field = Ranches.of(3).crop("lettuce").plan(settings).fields().get(0);
    assertThat(text(field, settings))
        .containsPattern("stands a mix of at most \\d\\.\\d+ dS/m: at least \\d+ % of it");
  }

  /**
   * By hand: E(t) = E∞ + (E0 - E∞) exp(-f D t / W), clay loam: f 0.5, W 0.38 x 1,200 mm; the mean
   * of the futures stays near the formula at their middle.
   */
  @Test
  void seasonsByHand() {
    PlanSettings settings =
        settings(
            "water.ec-dS-m=1",
            "water.sar=3",
            "water.applied-mm=1250",
            "water.season-et-mm=1000",
            "drainage=good",
            "leaching.target-ece=30",
            "years=4");
    ZonePlan zone = Ranches.of(9).plan(settings).zones().get(0);
    SaltYears years = zone.years().orElseThrow();
    assertThat(years.planned()).hasSize(4);
    assertThat(zone.reclamation().plannedMm()).isZero();
    double steady = SteadyState.of(settings.water()).orElseThrow().ece();
    double[] groups = {0.9 / 0.15, 0.7 / 0.28, 0.5 / 0.38};
    double now = zone.ece().mean();
    double nearest = Double.POSITIVE_INFINITY;
    for (double perWater : groups) {
      for (double depth : new double[] {900, 1200}) {
        double after = steady + (now - steady) * Math.exp(-perWater * 250 * 4 / depth);
        nearest = Math.min(nearest, Math.abs(years.last().p50() - after) / after);
      }
    }
    assertThat(nearest).isLessThan(0.03);
    assertThat(years.planned()).isEqualTo(years.untreated());
    double before = now;
    for (var season : years.planned()) {
      assertThat(season.mean()).isLessThan(before).isGreaterThan(steady);
      before = season.mean();
    }
    assertThat(years.undrained().mean()).as("salt that cannot leave").isGreaterThan(now);
    assertThat(years.reached()).hasValue(0);
  }

  @Test
  void thePlanBringsTheTargetSooner() {
    PlanSettings settings =
        settings(
            "water.ec-dS-m=1",
            "water.sar=3",
            "water.applied-mm=1100",
            "water.season-et-mm=1000",
            "drainage=good");
    ZonePlan zone = Ranches.of(9).sar(3).plan(settings).zones().get(0);
    SaltYears years = zone.years().orElseThrow();
    assertThat(zone.reclamation().plannedMm()).isPositive();
    assertThat(years.last().mean())
        .isLessThan(years.untreated().get(years.untreated().size() - 1).mean());
  }
}
