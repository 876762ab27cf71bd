package fieldsalt.plan.leaching;

import fieldsalt.facts.AyersWestcot1985;
import fieldsalt.plan.setting.WaterSettings;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a water alone makes of the root zone in the long run: ECe = X(LF) x EC of the water that
 * infiltrates, irrigation and rain together (Ayers and Westcot 1985, FAO 29 rev. 1, table 3).
 *
 * @param ece mean of the root zone, dS/m
 * @param withoutRain the same of the irrigation water alone
 * @param ecIn EC of the water that infiltrates, rain in it
 * @param fraction leaching fraction
 * @param source how the fraction is known
 * @param throughMm water that enters the soil over a season; empty where it cannot be told
 */
public record SteadyState(
    double ece,
    double withoutRain,
    double ecIn,
    double fraction,
    Source source,
    OptionalDouble throughMm) {
  /** Taken where nothing is known (common practice). */
  static final double USUAL_FRACTION = 0.15;

  /** A season that leaves less than this is as if it left this: salt has nowhere to go. */
  static final double LEAST_FRACTION = 0.02;

  private static final double MOST_FRACTION = 0.9;

  /** Where the leaching fraction comes from. */
  public enum Source {
    GIVEN,
    /** (applied + rain - ET) / (applied + rain). */
    FROM_BALANCE,
    /** Nothing is known of it. */
    TAKEN
  }

  /** Of a water; empty where its salinity is not known. */
  public static Optional<SteadyState> of(WaterSettings water) {
    if (water.ecDsPerM().isEmpty()) {
      return Optional.empty();
    }
    double rain = water.rainMm();
    OptionalDouble applied = water.season().appliedMm();
    OptionalDouble et = water.seasonEtMm();
    boolean balance = applied.isPresent() && et.isPresent() && applied.getAsDouble() + rain > 0;
    OptionalDouble given = water.season().leachingFraction();
    Source source = given.isPresent() ? Source.GIVEN : balance ? Source.FROM_BALANCE : Source.TAKEN;
    double fraction =
        switch (source) {
          case GIVEN -> given.getAsDouble();
          case FROM_BALANCE -> {
            double through = applied.getAsDouble() + rain;
            yield (through - et.getAsDouble()) / through;
          }
          case TAKEN -> USUAL_FRACTION;
        };
    double held = Math.min(MOST_FRACTION, Math.max(LEAST_FRACTION, fraction));
    OptionalDouble through =
        applied.isPresent()
            ? OptionalDouble.of(applied.getAsDouble() + rain)
            : et.isPresent() ? OptionalDouble.of(et.getAsDouble() / (1 - held)) : et;
    double ec = water.ecDsPerM().getAsDouble();
    double rained =
        through.isPresent() && through.getAsDouble() > rain
            ? (ec * (through.getAsDouble() - rain) + LeachingNeed.EC_RAIN * rain)
                / through.getAsDouble()
            : ec;
    return Optional.of(
        new SteadyState(
            AyersWestcot1985.meanEce(rained, held),
            AyersWestcot1985.meanEce(ec, held),
            rained,
            held,
            source,
            through));
  }

  /** Water that leaves the root zone in a season, mm. */
  public OptionalDouble drainedMm() {
    return throughMm.isPresent()
        ? OptionalDouble.of(fraction * throughMm.getAsDouble())
        : OptionalDouble.empty();
  }
}
