package fieldsalt.plan.leaching;

import static fieldsalt.quantity.Dimension.CONDUCTIVITY;
import static fieldsalt.quantity.Dimension.PERCENT;
import static fieldsalt.quantity.Dimension.WATER_DEPTH;

import fieldsalt.classes.MaasHoffman1977;
import fieldsalt.facts.AyersWestcot1985;
import fieldsalt.facts.Crop;
import fieldsalt.facts.Raats1975;
import fieldsalt.facts.Rhoades1974;
import fieldsalt.plan.setting.Irrigation;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.setting.WaterSettings;
import fieldsalt.plan.word.Sentence;
import fieldsalt.plan.zone.LeachingRequirement;
import fieldsalt.plan.zone.LeachingRequirement.Status;
import fieldsalt.quantity.Measure;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

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
    Optional<MaasHoffman1977> model = crop.flatMap(c -> model(c, gypsiferous));
    if (model.isEmpty()) {
      return LeachingRequirement.unknown(
          OptionalDouble.empty(),
          Sentence.of(
              "no-crop-numbers",
              "No leaching requirement: "
                  + crop.map(c -> "no threshold and slope are published for " + c.name())
                      .orElse("no crop is given (key crop)")
                  + "."));
    }
    double tolerable = tolerable(model.get());
    OptionalDouble water = ecWater();
    return water.isEmpty()
        ? LeachingRequirement.unknown(
            OptionalDouble.of(tolerable),
            Sentence.of(
                "no-water-ec",
                "No leaching requirement: the salinity of the irrigation water is not given (key"
                    + " water: ec-dS-m)."))
        : of(crop.orElseThrow(), model.get(), tolerable, water.getAsDouble());
  }

  private static Optional<MaasHoffman1977> model(Crop crop, boolean gypsiferous) {
    Optional<MaasHoffman1977> model = crop.tolerance().map(MaasHoffman1977::of);
    return gypsiferous ? model.map(MaasHoffman1977::onGypsiferousSoil) : model;
  }

  private double tolerable(MaasHoffman1977 model) {
    return model.eceAtPct(settings.leaching().tolerableYieldPct());
  }

  /** EC of the season's water: irrigation, thinned by the effective rain where ET is given. */
  OptionalDouble ecWater() {
    WaterSettings water = settings.water();
    if (water.ecDsPerM().isEmpty() || water.seasonEtMm().isEmpty() || water.rainMm() == 0) {
      return water.ecDsPerM();
    }
    double net = netMm();
    double total = net + water.rainMm();
    double salt = water.ecDsPerM().getAsDouble() * net + EC_RAIN * water.rainMm();
    return OptionalDouble.of(salt / total);
  }

  private double netMm() {
    WaterSettings water = settings.water();
    return Math.max(0, water.seasonEtMm().orElse(0) - water.rainMm());
  }

  private LeachingRequirement of(Crop crop, MaasHoffman1977 model, double tolerable, double water) {
    boolean frequent = settings.water().method() == Irrigation.DRIP;
    OptionalDouble fraction =
        frequent
            ? OptionalDouble.of(Rhoades1974.highFrequency(water, model.eceAtPct(0)))
            : Rhoades1974.conventional(water, tolerable);
    Status status = status(fraction);
    List<Sentence> said = new ArrayList<>();
    said.add(told(crop, status, fraction, tolerable, water, frequent));
    if (status == Status.NOT_FEASIBLE || status == Status.RARELY_PRACTICABLE) {
      said.addAll(whatWouldHelp(tolerable, water));
    }
    if (status == Status.NOT_FEASIBLE) {
      OptionalDouble e = OptionalDouble.empty();
      return new LeachingRequirement(
          status, e, OptionalDouble.of(tolerable), OptionalDouble.of(water), e, e, e, said);
    }
    return practicable(status, fraction.getAsDouble(), tolerable, water, said);
  }

  private LeachingRequirement practicable(
      Status status, double fraction, double tolerable, double water, List<Sentence> said) {
    OptionalDouble gross = gross(fraction);
    gross.ifPresent(
        mm ->
            said.add(
                Sentence.of(
                    "gross-irrigation",
                    "Irrigation of the season with it: {0}; at an efficiency of {1} the losses that"
                        + " pass the root zone already count as leaching.",
                    Measure.of(mm, WATER_DEPTH),
                    Measure.of(100 * settings.water().efficiency(), PERCENT))));
    boolean steady = fraction > 0;
    return new LeachingRequirement(
        status,
        OptionalDouble.of(fraction),
        OptionalDouble.of(tolerable),
        OptionalDouble.of(water),
        gross,
        steady
            ? OptionalDouble.of(AyersWestcot1985.meanEce(water, fraction))
            : OptionalDouble.empty(),
        steady
            ? OptionalDouble.of(Raats1975.meanSoilWater(water, fraction))
            : OptionalDouble.empty(),
        said);
  }

  private static Status status(OptionalDouble fraction) {
    if (fraction.isEmpty() || fraction.getAsDouble() > LeachingRequirement.NEVER) {
      return Status.NOT_FEASIBLE;
    }
    return fraction.getAsDouble() > LeachingRequirement.RARELY
        ? Status.RARELY_PRACTICABLE
        : Status.PRACTICABLE;
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

  private static Sentence told(
      Crop crop,
      Status status,
      OptionalDouble fraction,
      double tolerable,
      double water,
      boolean frequent) {
    Measure ece = Measure.of(tolerable, CONDUCTIVITY);
    Measure ecw = Measure.of(water, CONDUCTIVITY);
    if (fraction.isEmpty() || fraction.getAsDouble() >= 1) {
      return Sentence.of(
          "leaching-not-feasible",
          "Not feasible: water of {1} is too salty for "
              + crop.name()
              + " (tolerable ECe {0}); no amount of leaching is enough.",
          ece,
          ecw);
    }
    Measure lr = Measure.of(100 * fraction.getAsDouble(), PERCENT);
    if (status == Status.NOT_FEASIBLE) {
      return Sentence.of(
          "leaching-not-feasible",
          "Not feasible: "
              + crop.name()
              + " (tolerable ECe {0}) with water of {1} asks for {2} of the water to drain; no depth"
              + " is given above 50 %.",
          ece,
          ecw,
          lr);
    }
    String rule = frequent ? "frequent irrigation, FAO 29" : "Rhoades 1974";
    String rarely =
        status == Status.RARELY_PRACTICABLE
            ? " Rarely practicable: change the crop or the water."
            : "";
    return Sentence.of(
        status == Status.PRACTICABLE ? "leaching-requirement" : "leaching-rarely-practicable",
        "Every season {2} of the water must pass the root zone to keep "
            + crop.name()
            + " at its tolerable ECe of {0} with water of {1} ("
            + rule
            + "); the same in every zone."
            + rarely,
        ece,
        ecw,
        lr);
  }

  private List<Sentence> whatWouldHelp(double tolerable, double water) {
    double enough = Rhoades1974.waterFor(LeachingRequirement.RARELY, tolerable);
    List<Sentence> said = new ArrayList<>();
    said.add(
        Sentence.of(
            "water-that-would-do",
            "It would work with water of at most {0}: mix with better water until the blend is"
                + " there.",
            Measure.of(enough, CONDUCTIVITY)));
    String crops =
        settings.crops().compare().stream()
            .filter(c -> c.tolerance().isPresent() && stands(c, water))
            .map(Crop::name)
            .collect(Collectors.joining("; "));
    said.add(
        Sentence.of(
            "crops-that-would-do",
            crops.isEmpty()
                ? "None of the crops compared would manage with this water."
                : "With this water these crops would manage: " + crops + "."));
    return said;
  }

  private boolean stands(Crop crop, double water) {
    double tolerable = tolerable(MaasHoffman1977.of(crop.tolerance().orElseThrow()));
    OptionalDouble fraction = Rhoades1974.conventional(water, tolerable);
    return fraction.isPresent() && fraction.getAsDouble() <= LeachingRequirement.RARELY;
  }
}
