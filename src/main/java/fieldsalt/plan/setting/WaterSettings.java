package fieldsalt.plan.setting;

import fieldsalt.facts.InfiltrationHazard;
import fieldsalt.facts.SodiumAdsorptionRatio;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The irrigation water and how it is put on; empty where the job says nothing.
 *
 * @param ecDsPerM dS/m, at least 0
 * @param sar as given; worked out from the ions where it is not
 * @param efficiencyPct application efficiency; the method's usual one where empty
 * @param seasonEtMm evapotranspiration of the season
 * @param rainMm effective rain of the season, at least 0
 * @param season how the water is used now
 */
public record WaterSettings(
    OptionalDouble ecDsPerM,
    OptionalDouble sar,
    WaterIons ions,
    Irrigation method,
    OptionalDouble efficiencyPct,
    OptionalDouble seasonEtMm,
    double rainMm,
    Season season) {

  /**
   * How the water is used now.
   *
   * @param appliedMm irrigation of the season
   * @param leachingFraction share that passes the root zone
   * @param blend a second water
   */
  public record Season(
      OptionalDouble appliedMm, OptionalDouble leachingFraction, Optional<Blend> blend) {
    public static Season unknown() {
      return new Season(OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty());
    }
  }

  /** A water of which the season says nothing. */
  public WaterSettings(
      OptionalDouble ecDsPerM,
      OptionalDouble sar,
      WaterIons ions,
      Irrigation method,
      OptionalDouble efficiencyPct,
      OptionalDouble seasonEtMm,
      double rainMm) {
    this(ecDsPerM, sar, ions, method, efficiencyPct, seasonEtMm, rainMm, Season.unknown());
  }

  /** Ions of the water in meq/L, boron in mg/L; empty where not measured. */
  public record WaterIons(
      OptionalDouble na,
      OptionalDouble ca,
      OptionalDouble mg,
      OptionalDouble hco3,
      OptionalDouble cl,
      OptionalDouble boronMgL) {
    public static WaterIons none() {
      OptionalDouble e = OptionalDouble.empty();
      return new WaterIons(e, e, e, e, e, e);
    }
  }

  /** Nothing known; surface irrigation. */
  public static WaterSettings defaults() {
    OptionalDouble e = OptionalDouble.empty();
    return new WaterSettings(e, e, WaterIons.none(), Irrigation.SURFACE, e, e, 0);
  }

  /** SAR as given, else from Na, Ca and Mg; empty where neither is known. */
  public OptionalDouble sarKnown() {
    boolean fromIons = ions.na().isPresent() && ions.ca().isPresent() && ions.mg().isPresent();
    if (sar.isPresent() || !fromIons) {
      return sar;
    }
    double ca = ions.ca().getAsDouble();
    double mg = ions.mg().getAsDouble();
    return ca + mg > 0
        ? OptionalDouble.of(SodiumAdsorptionRatio.ofMeqL(ions.na().getAsDouble(), ca, mg))
        : OptionalDouble.empty();
  }

  /** How far the water seals the soil; empty where its EC or SAR is not known. */
  public Optional<InfiltrationHazard> hazard() {
    OptionalDouble sarKnown = sarKnown();
    return sarKnown.isPresent() && ecDsPerM.isPresent()
        ? Optional.of(InfiltrationHazard.of(sarKnown.getAsDouble(), ecDsPerM.getAsDouble()))
        : Optional.empty();
  }

  /** ECe that the soil comes to with this water: half of its EC (soil water twice the paste). */
  public double equilibriumEce() {
    return ecDsPerM.orElse(0) / 2;
  }

  /** Whether nothing is said of an irrigation water: the land may be rain-fed. */
  public boolean isUnknown() {
    return ecDsPerM.isEmpty() && sarKnown().isEmpty() && seasonEtMm.isEmpty();
  }

  /** Efficiency as a fraction. */
  public double efficiency() {
    return efficiencyPct.orElse(method.usualEfficiencyPct()) / 100;
  }
}
