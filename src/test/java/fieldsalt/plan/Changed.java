package fieldsalt.plan;

import fieldsalt.basis.depth.ProfileShape;
import fieldsalt.facts.Hoffman1980.Application;
import fieldsalt.finding.Finding;
import fieldsalt.plan.setting.CropSettings;
import fieldsalt.plan.setting.GroundSettings;
import fieldsalt.plan.setting.GroundSettings.Drainage;
import fieldsalt.plan.setting.GypsumSettings;
import fieldsalt.plan.setting.GypsumSettings.Lime;
import fieldsalt.plan.setting.Irrigation;
import fieldsalt.plan.setting.LeachingSettings;
import fieldsalt.plan.setting.MachineSettings;
import fieldsalt.plan.setting.MoneySettings;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.setting.Prices;
import fieldsalt.plan.setting.WaterSettings;
import fieldsalt.plan.setting.WaterSettings.WaterIons;
import fieldsalt.plan.soil.FieldEvidence;
import fieldsalt.plan.soil.FieldSoil;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Settings and findings of tests that differ in one thing. */
public final class Changed {
  private Changed() {}

  public static GroundSettings withDrainage(GroundSettings s, Drainage other) {
    return new GroundSettings(other, s.waterTableCm());
  }

  public static GroundSettings withWaterTableCm(GroundSettings s, double cm) {
    return new GroundSettings(s.drainage(), OptionalDouble.of(cm));
  }

  public static GypsumSettings withDepthCm(GypsumSettings s, double cm) {
    return new GypsumSettings(
        s.targetEspPct(),
        cm,
        s.purityPct(),
        s.moisturePct(),
        s.capTPerHa(),
        s.minTPerHa(),
        s.lime());
  }

  public static GypsumSettings withLime(GypsumSettings s, Lime other) {
    return new GypsumSettings(
        s.targetEspPct(),
        s.depthCm(),
        s.purityPct(),
        s.moisturePct(),
        s.capTPerHa(),
        s.minTPerHa(),
        other);
  }

  public static GypsumSettings withProduct(GypsumSettings s, double purity, double moisture) {
    return new GypsumSettings(
        s.targetEspPct(),
        s.depthCm(),
        OptionalDouble.of(purity),
        moisture,
        s.capTPerHa(),
        s.minTPerHa(),
        s.lime());
  }

  public static GypsumSettings withRates(GypsumSettings s, double cap, double min) {
    return new GypsumSettings(
        s.targetEspPct(), s.depthCm(), s.purityPct(), s.moisturePct(), cap, min, s.lime());
  }

  public static GypsumSettings withTargetEspPct(GypsumSettings s, double pct) {
    return new GypsumSettings(
        pct, s.depthCm(), s.purityPct(), s.moisturePct(), s.capTPerHa(), s.minTPerHa(), s.lime());
  }

  public static LeachingSettings withApplication(LeachingSettings s, Application other) {
    return new LeachingSettings(
        s.targetEce(), s.depthCm(), Optional.of(other), s.tolerableYieldPct());
  }

  public static LeachingSettings withDepthCm(LeachingSettings s, double cm) {
    return new LeachingSettings(
        s.targetEce(), OptionalDouble.of(cm), s.application(), s.tolerableYieldPct());
  }

  public static LeachingSettings withTargetEce(LeachingSettings s, double dsPerM) {
    return new LeachingSettings(
        OptionalDouble.of(dsPerM), s.depthCm(), s.application(), s.tolerableYieldPct());
  }

  public static LeachingSettings withTolerableYieldPct(LeachingSettings s, double pct) {
    return new LeachingSettings(s.targetEce(), s.depthCm(), s.application(), pct);
  }

  public static MoneySettings withActAbove(MoneySettings s, double chance) {
    return new MoneySettings(s.prices(), s.years(), chance);
  }

  public static MoneySettings withPrices(MoneySettings s, Prices other) {
    return new MoneySettings(other, s.years(), s.actAbove());
  }

  public static MoneySettings withYears(MoneySettings s, int other) {
    return new MoneySettings(s.prices(), other, s.actAbove());
  }

  public static PlanSettings withCrops(PlanSettings s, CropSettings other) {
    return new PlanSettings(
        s.water(), s.ground(), s.leaching(), s.gypsum(), s.machine(), s.money(), other);
  }

  public static PlanSettings withGround(PlanSettings s, GroundSettings other) {
    return new PlanSettings(
        s.water(), other, s.leaching(), s.gypsum(), s.machine(), s.money(), s.crops());
  }

  public static PlanSettings withGypsum(PlanSettings s, GypsumSettings other) {
    return new PlanSettings(
        s.water(), s.ground(), s.leaching(), other, s.machine(), s.money(), s.crops());
  }

  public static PlanSettings withLeaching(PlanSettings s, LeachingSettings other) {
    return new PlanSettings(
        s.water(), s.ground(), other, s.gypsum(), s.machine(), s.money(), s.crops());
  }

  public static PlanSettings withMachine(PlanSettings s, MachineSettings other) {
    return new PlanSettings(
        s.water(), s.ground(), s.leaching(), s.gypsum(), other, s.money(), s.crops());
  }

  public static PlanSettings withMoney(PlanSettings s, MoneySettings other) {
    return new PlanSettings(
        s.water(), s.ground(), s.leaching(), s.gypsum(), s.machine(), other, s.crops());
  }

  public static PlanSettings withWater(PlanSettings s, WaterSettings other) {
    return new PlanSettings(
        other, s.ground(), s.leaching(), s.gypsum(), s.machine(), s.money(), s.crops());
  }

  public static WaterSettings withEc(WaterSettings s, double dsPerM) {
    return new WaterSettings(
        OptionalDouble.of(dsPerM),
        s.sar(),
        s.ions(),
        s.method(),
        s.efficiencyPct(),
        s.seasonEtMm(),
        s.rainMm());
  }

  public static WaterSettings withEfficiencyPct(WaterSettings s, double pct) {
    return new WaterSettings(
        s.ecDsPerM(),
        s.sar(),
        s.ions(),
        s.method(),
        OptionalDouble.of(pct),
        s.seasonEtMm(),
        s.rainMm());
  }

  public static WaterSettings withIons(WaterSettings s, WaterIons other) {
    return new WaterSettings(
        s.ecDsPerM(), s.sar(), other, s.method(), s.efficiencyPct(), s.seasonEtMm(), s.rainMm());
  }

  public static WaterSettings withMethod(WaterSettings s, Irrigation other) {
    return new WaterSettings(
        s.ecDsPerM(), s.sar(), s.ions(), other, s.efficiencyPct(), s.seasonEtMm(), s.rainMm());
  }

  public static WaterSettings withSar(WaterSettings s, double value) {
    return new WaterSettings(
        s.ecDsPerM(),
        OptionalDouble.of(value),
        s.ions(),
        s.method(),
        s.efficiencyPct(),
        s.seasonEtMm(),
        s.rainMm());
  }

  public static WaterSettings withSeason(WaterSettings s, double etMm, double effectiveRainMm) {
    return new WaterSettings(
        s.ecDsPerM(),
        s.sar(),
        s.ions(),
        s.method(),
        s.efficiencyPct(),
        OptionalDouble.of(etMm),
        effectiveRainMm);
  }

  public static FieldEvidence withNoBetterThanMean(FieldEvidence s, boolean is) {
    return new FieldEvidence(
        s.sites(),
        is,
        s.topsoilOnly(),
        s.profile(),
        s.seedbedEce(),
        s.sodiumUncorrected(),
        s.undermining());
  }

  public static FieldEvidence withProfile(FieldEvidence s, ProfileShape shape) {
    return new FieldEvidence(
        s.sites(),
        s.noBetterThanMean(),
        s.topsoilOnly(),
        shape,
        s.seedbedEce(),
        s.sodiumUncorrected(),
        s.undermining());
  }

  public static FieldEvidence withSeedbedEce(FieldEvidence s, double dsPerM) {
    return new FieldEvidence(
        s.sites(),
        s.noBetterThanMean(),
        s.topsoilOnly(),
        s.profile(),
        OptionalDouble.of(dsPerM),
        s.sodiumUncorrected(),
        s.undermining());
  }

  public static FieldEvidence withSodiumUncorrected(FieldEvidence s, boolean is) {
    return new FieldEvidence(
        s.sites(),
        s.noBetterThanMean(),
        s.topsoilOnly(),
        s.profile(),
        s.seedbedEce(),
        is,
        s.undermining());
  }

  public static FieldEvidence withTopsoilOnly(FieldEvidence s, boolean is) {
    return new FieldEvidence(
        s.sites(),
        s.noBetterThanMean(),
        is,
        s.profile(),
        s.seedbedEce(),
        s.sodiumUncorrected(),
        s.undermining());
  }

  public static FieldEvidence withUndermining(FieldEvidence s, List<Finding> findings) {
    return new FieldEvidence(
        s.sites(),
        s.noBetterThanMean(),
        s.topsoilOnly(),
        s.profile(),
        s.seedbedEce(),
        s.sodiumUncorrected(),
        findings);
  }

  public static FieldSoil withBoronMgL(FieldSoil s, double mgL) {
    return new FieldSoil(
        s.texture(),
        s.clayPct(),
        s.omPct(),
        s.gypsumPct(),
        s.profileGypsumPct(),
        s.gypsumSuspected(),
        OptionalDouble.of(mgL),
        s.chlorideMeqL(),
        s.laboratoryRequirement());
  }

  public static FieldSoil withGypsumPct(FieldSoil s, double pct) {
    return new FieldSoil(
        s.texture(),
        s.clayPct(),
        s.omPct(),
        OptionalDouble.of(pct),
        OptionalDouble.of(pct),
        s.gypsumSuspected(),
        s.boronMgL(),
        s.chlorideMeqL(),
        s.laboratoryRequirement());
  }

  public static FieldSoil withLaboratoryRequirement(FieldSoil s, double tPerHa) {
    return new FieldSoil(
        s.texture(),
        s.clayPct(),
        s.omPct(),
        s.gypsumPct(),
        s.profileGypsumPct(),
        s.gypsumSuspected(),
        s.boronMgL(),
        s.chlorideMeqL(),
        OptionalDouble.of(tPerHa));
  }
}
