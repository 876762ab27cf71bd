package fieldsalt.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.classes.MaasHoffman1977;
import fieldsalt.facts.Crop;
import fieldsalt.facts.Crops;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.handover.output.TablesOutput;
import fieldsalt.handover.output.ZonesOutput;
import fieldsalt.handover.table.CsvTable;
import fieldsalt.plan.field.Comparison;
import fieldsalt.plan.field.FieldPlan;
import fieldsalt.plan.gypsum.RateRow;
import fieldsalt.plan.setting.CropSettings;
import fieldsalt.plan.setting.MoneySettings;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.setting.Prices;
import fieldsalt.plan.setting.WaterSettings;
import fieldsalt.plan.soil.FieldEvidence;
import fieldsalt.plan.soil.FieldSoil;
import fieldsalt.plan.word.Sentence;
import fieldsalt.plan.zone.Draft;
import fieldsalt.plan.zone.LeachingRequirement;
import fieldsalt.plan.zone.YieldOutlook;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.quantity.Texture;
import fieldsalt.quantity.UnitSystem;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class PlanDetailsTest {
  private static final PlanSettings DRAINED = Ranches.drained();

  private static List<String> codes(List<Sentence> sentences) {
    return sentences.stream().map(Sentence::code).toList();
  }

  private static FieldPlan field(Ranches ranch, PlanSettings settings) {
    return ranch.plan(settings).fields().get(0);
  }

  /** Expected over the points of the zone: closed form, below the yield at the median. */
  @Test
  void yieldIsExpectedOverTheDistribution() {
    ZonePlan zone = Ranches.of(3).sar(3).plan(DRAINED).zones().get(0);
    YieldOutlook outlook = zone.yield().orElseThrow();
    double variance = 0.005 + 0.01 + 0.02;
    MaasHoffman1977 alfalfa = new MaasHoffman1977(2, 7.3);
    assertThat(outlook.expectedPct())
        .isCloseTo(alfalfa.expectedPct(Math.log(3), Math.sqrt(variance)), within(1e-9))
        .isLessThan(alfalfa.pct(3));
    assertThat(outlook.pct().mean()).isCloseTo(outlook.expectedPct(), within(0.2));
    assertThat(outlook.pct().p10()).isLessThan(outlook.pct().p90());
  }

  /** Area above the threshold is the sum of chances, not a count of cells. */
  @Test
  void areaAboveTheThresholdIsASumOfChances() {
    ZonePlan zone = Ranches.of(1.9).plan(DRAINED).zones().get(0);
    double s = Math.sqrt(0.005 + 0.01 + 0.02);
    double chance = fieldsalt.gaussian.Normal.above((Math.log(2) - Math.log(1.9)) / s);
    assertThat(chance).isBetween(0.3, 0.45);
    assertThat(zone.yield().orElseThrow().areaAboveHa()).isCloseTo(10 * chance, within(1e-6));
  }

  @Test
  void sCurveIsAnOption() {
    PlanSettings curve =
        Changed.withCrops(DRAINED, CropSettings.defaults().withCurve(CropSettings.Curve.S_CURVE));
    double two = Ranches.of(2).plan(DRAINED).zones().get(0).yield().orElseThrow().expectedPct();
    double s = Ranches.of(2).plan(curve).zones().get(0).yield().orElseThrow().expectedPct();
    assertThat(s).as("already below full at the threshold").isLessThan(two).isGreaterThan(90);
  }

  /** Maas 1990, note (c): +2 dS/m on confirmed gypsum, for yield and leaching alike. */
  @Test
  void gypsiferousSoilRaisesThresholds() {
    FieldSoil gypsum = Changed.withGypsumPct(FieldSoil.unknown().withTexture(Texture.LOAM), 2);
    FieldPlan field = field(Ranches.of(5).crop("wheat").soil(gypsum), DRAINED);
    assertThat(field.zones().get(0).yield().orElseThrow().threshold()).isEqualTo(8);
    assertThat(codes(Said.cautions(field, DRAINED))).contains("gypsiferous");
    assertThat(field.leaching().tolerableEce().orElseThrow()).isCloseTo(8 + 10 / 7.1, within(1e-9));
  }

  @Test
  void twelveCropsSortedByExpectedYield() {
    RanchPlan plan = Ranches.of(3, 9).plan(DRAINED);
    assertThat(plan.crops()).hasSize(12);
    List<Double> ranch = plan.crops().stream().map(c -> c.ranchPct().orElseThrow()).toList();
    assertThat(ranch).isSortedAccordingTo((a, b) -> Double.compare(b, a));
    assertThat(plan.crops()).allSatisfy(c -> assertThat(c.zonePct()).hasSize(2));
    assertThat(plan.crops()).allSatisfy(c -> assertThat(c.crop().source()).isNotBlank());
    assertThat(plan.crops().get(11).crop().name()).isEqualTo("Almond");
    List<Crop> own = Crops.standard().search("safflower");
    RanchPlan rated =
        Ranches.of(3).plan(Changed.withCrops(DRAINED, CropSettings.defaults().withCompare(own)));
    assertThat(rated.crops().get(0).ranchPct()).isEmpty();
  }

  @Test
  void ratingOnlyCropsPlanWithoutYield() {
    ZonePlan zone = Ranches.of(8).crop("safflower").sar(3).plan(DRAINED).zones().get(0);
    assertThat(zone.yield()).isEmpty();
    assertThat(ZonesOutput.plan(zone)).containsEntry("yield_pct", null);
    assertThat(zone.reclamation().targetEce()).as("Handbook 60").isEqualTo(4);
    assertThat(zone.leaching().status()).isEqualTo(LeachingRequirement.Status.UNKNOWN);
  }

  /** Uniform against by zone: the same field, tonnes, water and yield side by side. */
  @Test
  void uniformAgainstByZone() {
    FieldPlan field = field(Ranches.of(3, 12).esp(5, 40).cec(20, 20), DRAINED);
    Comparison.Side uniform = field.comparison().uniform();
    Comparison.Side byZone = field.comparison().byZone();
    assertThat(byZone.tonnes()).isCloseTo(field.plannedT(), within(1e-9));
    assertThat(uniform.tonnes()).as("mean of both zones on both zones").isPositive();
    assertThat(uniform.excessTonnes()).isGreaterThan(byZone.excessTonnes() * 2);
    assertThat(uniform.shortTonnes()).isGreaterThan(byZone.shortTonnes());
    assertThat(byZone.leachingM3()).isPositive();
    assertThat(byZone.expectedYieldPct()).isGreaterThanOrEqualTo(uniform.expectedYieldPct() - 2);
  }

  /** Totals rest on futures in which the zones move together: wider than independent ones. */
  @Test
  void totalsCarryTheSharedError() {
    RanchPlan plan = Ranches.of(2, 2, 2, 2).esp(25, 25, 25, 25).cec(20, 20, 20, 20).plan(DRAINED);
    double zoneWidth =
        plan.zones().get(0).gypsum().pure().p90() - plan.zones().get(0).gypsum().pure().p10();
    double total = plan.gypsumT().p90() - plan.gypsumT().p10();
    assertThat(total)
        .as("four zones of one laboratory: four times one, not twice")
        .isGreaterThan(3.5 * 10 * zoneWidth);
    assertThat(plan.gypsumT().p50()).isCloseTo(plan.plannedT(), within(0.05 * plan.plannedT()));
    assertThat(plan.plannedT())
        .isCloseTo(
            plan.rates().stream().mapToDouble(r -> r.tonnes().orElse(0)).sum(), within(1e-9));
  }

  @Test
  void draftsSayWhatWouldLiftThem() {
    FieldEvidence weak =
        Changed.withUndermining(
            Changed.withSodiumUncorrected(
                Changed.withTopsoilOnly(FieldEvidence.firm(5), true), true),
            List.of(new Finding(Code.CALCULATED_ECE, Place.field("north"), "found", "mend")));
    FieldPlan field = field(Ranches.of(9).sar(3).evidence(weak), PlanSettings.defaults());
    assertThat(field.draft().reasons())
        .extracting(Draft.Reason::code)
        .containsExactly(
            Code.DRAFT_FEW_SITES,
            Code.DRAFT_TOPSOIL_ONLY,
            Code.DRAFT_SODIUM_UNCORRECTED,
            Code.DRAFT_DRAINAGE_NOT_PROVED,
            Code.DRAFT_CALCULATED_ECE);
    assertThat(field.draft().reasons()).allSatisfy(r -> assertThat(r.lift()).isNotBlank());
    assertThat(codes(Said.cautions(field, PlanSettings.defaults())))
        .contains("topsoil-only", "licensed-adviser");
    assertThat(Ranches.of(9).sar(3).evidence(weak).plan(DRAINED).findings())
        .extracting(f -> f.code().id())
        .contains("draft-few-sites");
    assertThat(field(Ranches.of(1).sar(3), PlanSettings.defaults()).draft().isDraft())
        .as("nothing is treated, so drainage does not matter")
        .isFalse();
  }

  /** Seedbed: 4 dS/m, beet 3 (Maas 1990). */
  @Test
  void emergenceCaution() {
    FieldEvidence seedbed = Changed.withSeedbedEce(FieldEvidence.firm(30), 3.5);
    assertThat(codes(Said.cautions(field(Ranches.of(3).evidence(seedbed), DRAINED), DRAINED)))
        .doesNotContain("emergence");
    assertThat(
            codes(
                Said.cautions(
                    field(Ranches.of(3).crop("sugar beet").evidence(seedbed), DRAINED), DRAINED)))
        .contains("emergence");
  }

  @Test
  void cropsWithTheirOwnCaution() {
    assertThat(codes(Said.cautions(field(Ranches.of(3).crop("almond"), DRAINED), DRAINED)))
        .contains("rootstock-chloride");
    assertThat(codes(Said.cautions(field(Ranches.of(3).crop("Rice (paddy)"), DRAINED), DRAINED)))
        .contains("rice-soil-water");
  }

  /** FAO 29, table 1: hazard and restrictions of the water. */
  @Test
  void cautionsOfTheWater() {
    java.util.OptionalDouble e = java.util.OptionalDouble.empty();
    WaterSettings water =
        Changed.withIons(
            Changed.withSar(Changed.withEc(WaterSettings.defaults(), 0.5), 10),
            new WaterSettings.WaterIons(
                e,
                e,
                e,
                java.util.OptionalDouble.of(9),
                java.util.OptionalDouble.of(5),
                java.util.OptionalDouble.of(1)));
    List<Sentence> said =
        Said.cautionsOfFirstField(Ranches.of(3).plan(Changed.withWater(DRAINED, water)));
    assertThat(codes(said))
        .contains("infiltration-hazard", "water-hco3", "water-cl", "water-b", "water-sar")
        .doesNotContain("water-ec", "water-na");
    assertThat(said)
        .filteredOn(s -> s.code().equals("water-hco3"))
        .allSatisfy(s -> assertThat(s.text(UnitSystem.METRIC)).contains("9 meq/L", "severely"));
  }

  @Test
  void ratesInBothSystems() {
    RanchPlan plan = Ranches.of(2).esp(25).cec(20).plan(DRAINED);
    RateRow row = plan.rates().get(0);
    CsvTable metric = TablesOutput.rates(plan.rates(), UnitSystem.METRIC);
    CsvTable us = TablesOutput.rates(plan.rates(), UnitSystem.US);
    assertThat(metric.header().get(3)).isEqualTo("gypsum_t_ha_per_pass");
    assertThat(us.header().get(3)).isEqualTo("gypsum_tons_acre_per_pass");
    double tha = Double.parseDouble(metric.rows().get(0).get(3).toString());
    double tac = Double.parseDouble(us.rows().get(0).get(3).toString());
    assertThat(tha / tac).as("1 short ton/acre = 2.2417 t/ha").isCloseTo(2.2417, within(0.001));
    assertThat(row.tonnes().orElseThrow())
        .isCloseTo(row.areaHa() * row.ratePerPass().orElseThrow() * row.passes(), within(1e-9));
  }

  /** What cannot be told is blank, never a silent 0. */
  @Test
  void ratesThatCannotBeToldAreBlank() {
    List<Object> unknown =
        TablesOutput.rates(Ranches.of(8).plan(DRAINED).rates(), UnitSystem.METRIC).rows().get(0);
    assertThat(unknown.subList(5, 10)).as("need, range, chance").containsOnly("");
    assertThat(unknown.get(3)).as("a rate that nobody can say").isEqualTo("");
    assertThat(unknown.get(11)).as("cost without prices").isEqualTo("");
    PlanSettings priced =
        Changed.withMoney(
            DRAINED,
            Changed.withPrices(MoneySettings.defaults(), Prices.of(Map.of("gypsum-per-t", 40.0))));
    assertThat(
            TablesOutput.rates(Ranches.of(8).plan(priced).rates(), UnitSystem.METRIC)
                .rows()
                .get(0)
                .get(11))
        .isEqualTo("0.00");
  }

  @Test
  void theWayOutForTheWaterIsAskedForUntilItIsProved() {
    String asked =
        Said.ofFirstZone(Ranches.of(9).sar(3).plan(PlanSettings.defaults()))
            .get(0)
            .text(UnitSystem.METRIC);
    String proved =
        Said.ofFirstZone(Ranches.of(9).sar(3).plan(DRAINED)).get(0).text(UnitSystem.METRIC);
    assertThat(asked).contains("Find out first whether it can leave");
    assertThat(proved).doesNotContain("Find out first");
  }

  /** What zones.geojson carries. */
  @Test
  void properties() {
    Map<String, Object> p =
        ZonesOutput.plan(Ranches.of(9).esp(25).cec(20).plan(DRAINED).zones().get(0));
    assertThat(p.keySet())
        .contains(
            "yield_pct",
            "leaching_mm",
            "leaching_requirement",
            "gypsum_t_ha",
            "gypsum_t_ha_low",
            "gypsum_t_ha_high",
            "gypsum_chance",
            "first_step",
            "draft");
    assertThat((Double) p.get("gypsum_t_ha_low")).isLessThan((Double) p.get("gypsum_t_ha"));
    assertThat((Double) p.get("gypsum_t_ha_high")).isGreaterThan((Double) p.get("gypsum_t_ha"));
  }

  /** Sites to measure: the one nearest the middle first, then the farthest from those chosen. */
  @Test
  void sitesToMeasureAreSpread() {
    assertThat(Said.ofFirstZone(Ranches.of(8).withSites().plan(DRAINED)))
        .filteredOn(s -> s.code().equals("measure-sodium"))
        .allSatisfy(
            s -> assertThat(s.text(UnitSystem.METRIC)).contains("on these sites: mid, far, low"))
        .hasSize(1);
  }
}
