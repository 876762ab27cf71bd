package fieldsalt.plan;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.facts.Crop;
import fieldsalt.facts.Crops;
import fieldsalt.plan.field.FieldPlan;
import fieldsalt.plan.setting.CropSettings;
import fieldsalt.plan.setting.GroundSettings;
import fieldsalt.plan.setting.GroundSettings.Drainage;
import fieldsalt.plan.setting.GypsumSettings;
import fieldsalt.plan.setting.Irrigation;
import fieldsalt.plan.setting.MachineSettings;
import fieldsalt.plan.setting.MoneySettings;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.setting.Prices;
import fieldsalt.plan.setting.WaterSettings;
import fieldsalt.plan.soil.FieldSoil;
import fieldsalt.plan.word.Sentence;
import fieldsalt.plan.zone.Step;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.quantity.Texture;
import fieldsalt.quantity.UnitSystem;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * Whatever is asked for within the allowed settings, every figure is finite and has its sentence.
 */
class NeverSilentTest {
  private final Random random = new Random(7);

  private double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  private boolean toss() {
    return random.nextBoolean();
  }

  private <T> T pick(List<T> some) {
    return some.get(random.nextInt(some.size()));
  }

  private PlanSettings settings() {
    WaterSettings water =
        Changed.withEfficiencyPct(
            Changed.withMethod(WaterSettings.defaults(), pick(List.of(Irrigation.values()))),
            between(20, 100));
    if (toss()) {
      water = Changed.withEc(water, toss() ? 0 : between(0, 50));
    }
    if (toss()) {
      water = Changed.withSar(water, toss() ? 0 : between(0, 80));
    }
    if (toss()) {
      water = Changed.withSeason(water, between(0, 1500), between(0, 2000));
    }
    PlanSettings settings =
        Changed.withCrops(
            Changed.withGypsum(
                Changed.withGround(
                    Changed.withWater(PlanSettings.defaults(), water),
                    Changed.withDrainage(
                        GroundSettings.defaults(), pick(List.of(Drainage.values())))),
                Changed.withRates(
                    Changed.withProduct(
                        Changed.withTargetEspPct(GypsumSettings.defaults(), between(0, 30)),
                        between(1, 100),
                        between(0, 60)),
                    between(0.5, 20),
                    between(0, 5))),
            CropSettings.defaults().withCompare(Crops.standard().twelve().subList(0, 2)));
    if (toss()) {
      settings =
          Changed.withMachine(
              settings, MachineSettings.of(between(0, 5), between(5, 20), between(0.05, 3)));
    }
    return toss() ? Changed.withMoney(settings, money()) : settings;
  }

  private MoneySettings money() {
    Map<String, Double> prices = new TreeMap<>();
    for (String name : Prices.NAMES.keySet()) {
      if (toss()) {
        prices.put(name, toss() ? 0 : between(0, 500));
      }
    }
    return Changed.withYears(
        Changed.withActAbove(
            Changed.withPrices(MoneySettings.defaults(), Prices.of(prices)), between(0.05, 0.95)),
        1 + random.nextInt(20));
  }

  private Ranches ranch() {
    List<Crop> crops = Crops.standard().search("");
    Ranches ranch =
        Ranches.of(between(0.05, 3), between(1, 20), between(10, 150))
            .crop(toss() ? "" : pick(crops).name())
            .soil(soil())
            .zoneVariance(between(1e-6, 1));
    if (toss()) {
      ranch.sar(between(0.1, 5), between(5, 30), between(20, 200));
    }
    if (toss()) {
      ranch.esp(between(0.5, 5), between(5, 30), between(20, 95));
    }
    return toss() ? ranch.cec(between(1, 10), between(10, 30), between(20, 80)) : ranch;
  }

  private FieldSoil soil() {
    FieldSoil soil = FieldSoil.unknown().withTexture(pick(List.of(Texture.values())));
    return toss()
        ? soil
        : Changed.withBoronMgL(Changed.withGypsumPct(soil, between(0, 5)), between(0, 30));
  }

  @Test
  void everyFigureIsFiniteAndEveryRefusalIsSaid() {
    for (int trial = 0; trial < 60; trial++) {
      RanchPlan plan = ranch().plan(settings());
      assertThat(plan.toString()).as("trial %d", trial).doesNotContain("NaN", "Infinity");
      for (ZonePlan zone : plan.zones()) {
        check(zone, plan.settings());
      }
      for (FieldPlan field : plan.fields()) {
        Said.of(field, plan.settings()).forEach(NeverSilentTest::check);
        Said.cautions(field, plan.settings()).forEach(NeverSilentTest::check);
      }
    }
  }

  private static void check(ZonePlan zone, PlanSettings settings) {
    List<Sentence> said = Said.of(zone, settings);
    List<String> codes = said.stream().map(Sentence::code).toList();
    assertThat(codes).anySatisfy(c -> assertThat(c).containsPattern("gypsum|measure-"));
    assertThat(codes)
        .anySatisfy(c -> assertThat(c).isIn("reclamation", "no-reclamation", "target-below-water"));
    assertThat(zone.steps()).isNotEmpty();
    if (zone.situation().isSodic()) {
      assertThat(zone.firstStep()).isNotIn(Step.LEACHING, Step.WATER_IN);
    }
    assertThat(zone.productTPerHa()).isNotNegative();
    assertThat(zone.reclamation().plannedMm()).isNotNegative();
    said.forEach(NeverSilentTest::check);
    Said.cautions(zone, settings).forEach(NeverSilentTest::check);
  }

  private static void check(Sentence sentence) {
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(sentence.text(units)).doesNotContain("{", "NaN", "Infinity", "null");
    }
  }
}
