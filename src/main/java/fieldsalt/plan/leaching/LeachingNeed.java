package fieldsalt.plan.leaching;

import fieldsalt.classes.MaasHoffman1977;
import fieldsalt.facts.Crop;
import fieldsalt.facts.Rhoades1974;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.setting.WaterSettings;
import fieldsalt.plan.zone.LeachingRequirement;
import fieldsalt.plan.zone.LeachingRequirement.Instead;
import fieldsalt.plan.zone.LeachingRequirement.Status;
import java.util.Optional;
import java.util.OptionalDouble;

/** Works out the leaching requirement of a crop under a water. */
public final class LeachingNeed {
  /** EC of rain, dS/m (common practice). */
  static final double EC_RAIN = 0.02;

  private final PlanSettings settings;

  public LeachingNeed(PlanSettings settings) {
    this.settings = settings;
  }

  /**
   * The requirement of a field's crop.
   *
   * @param gypsiferous whether gypsum is confirmed in the root zone
   */
  public LeachingRequirement of(Optional<Crop> crop, boolean gypsiferous) {
    OptionalDouble none = OptionalDouble.empty();
    OptionalDouble water = ecWater();
    Optional<MaasHoffman1977> model =
        crop.flatMap(Crop::tolerance).map(t -> MaasHoffman1977.of(t, gypsiferous));
    OptionalDouble tolerable = model.isEmpty() ? none : OptionalDouble.of(tolerable(model.get()));
    if (model.isEmpty() || water.isEmpty()) {
      return new LeachingRequirement(
          Status.UNKNOWN, crop, none, tolerable, water, none, Optional.empty());
    }
    OptionalDouble asked = asked(model.get(), water.getAsDouble());
    Status status = status(asked);
    return new LeachingRequirement(
        status,
        crop,
        asked,
        tolerable,
        water,
        status == Status.NOT_FEASIBLE ? none : gross(asked.getAsDouble()),
        status == Status.PRACTICABLE
            ? Optional.empty()
            : Optional.of(instead(tolerable.getAsDouble(), water.getAsDouble())));
  }

  private double tolerable(MaasHoffman1977 model) {
    return model.eceAtPct(settings.leaching().tolerableYieldPct());
  }

  private OptionalDouble asked(MaasHoffman1977 model, double water) {
    return settings.water().method().isFrequent()
        ? OptionalDouble.of(Rhoades1974.highFrequency(water, model.eceAtPct(0)))
        : Rhoades1974.conventional(water, tolerable(model));
  }

  /** EC of the season's water: irrigation, thinned by the effective rain where ET is given. */
  OptionalDouble ecWater() {
    WaterSettings water = settings.water();
    if (water.ecDsPerM().isEmpty() || water.seasonEtMm().isEmpty() || water.rainMm() == 0) {
      return water.ecDsPerM();
    }
    double net = netMm();
    double salt = water.ecDsPerM().getAsDouble() * net + EC_RAIN * water.rainMm();
    return OptionalDouble.of(salt / (net + water.rainMm()));
  }

  private double netMm() {
    return Math.max(0, settings.water().seasonEtMm().orElse(0) - settings.water().rainMm());
  }

  private static Status status(OptionalDouble asked) {
    double fraction = asked.orElse(Double.POSITIVE_INFINITY);
    if (fraction > LeachingRequirement.NEVER) {
      return Status.NOT_FEASIBLE;
    }
    return fraction > LeachingRequirement.RARELY ? Status.RARELY_PRACTICABLE : Status.PRACTICABLE;
  }

  /** Irrigation of the season, mm; empty without ET. */
  OptionalDouble gross(double fraction) {
    WaterSettings water = settings.water();
    if (water.seasonEtMm().isEmpty()) {
      return OptionalDouble.empty();
    }
    double efficiency = water.efficiency();
    if (!water.method().isOverhead()) {
      return OptionalDouble.of(netMm() / Math.min(efficiency, 1 - fraction));
    }
    double depth = netMm() / efficiency;
    return OptionalDouble.of(fraction < 0.1 ? depth : 0.9 * depth / (1 - fraction));
  }

  private Instead instead(double tolerable, double water) {
    return new Instead(
        Rhoades1974.waterFor(LeachingRequirement.RARELY, tolerable),
        settings.crops().compare().stream().filter(c -> manages(c, water)).toList());
  }

  private boolean manages(Crop crop, double water) {
    return crop.tolerance()
        .map(t -> Rhoades1974.conventional(water, tolerable(MaasHoffman1977.of(t))))
        .filter(lr -> lr.isPresent() && lr.getAsDouble() <= LeachingRequirement.RARELY)
        .isPresent();
  }
}
