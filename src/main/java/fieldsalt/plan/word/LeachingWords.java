package fieldsalt.plan.word;

import static fieldsalt.quantity.Dimension.BORON;
import static fieldsalt.quantity.Dimension.CONDUCTIVITY;
import static fieldsalt.quantity.Dimension.PERCENT;
import static fieldsalt.quantity.Dimension.SOIL_DEPTH;
import static fieldsalt.quantity.Dimension.VOLUME;
import static fieldsalt.quantity.Dimension.WATER_DEPTH;

import fieldsalt.facts.Crop;
import fieldsalt.facts.Rhoades1974;
import fieldsalt.plan.leaching.BoronNeed;
import fieldsalt.plan.leaching.SteadyState;
import fieldsalt.plan.setting.Blend;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.zone.LeachingRequirement;
import fieldsalt.plan.zone.LeachingRequirement.Instead;
import fieldsalt.plan.zone.LeachingRequirement.Status;
import fieldsalt.plan.zone.Reclamation;
import fieldsalt.quantity.Measure;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** What is said of leaching: every season's, the one-off, and that of boron. */
final class LeachingWords {
  private static final Sentence ONE_PORE_VOLUME =
      Sentence.of(
          "about-one-pore-volume",
          "The zone is hardly above its target: about one pore volume moves the salt down rather"
              + " than out; low confidence.");

  private final PlanSettings settings;

  LeachingWords(PlanSettings settings) {
    this.settings = settings;
  }

  /** Of the requirement of a crop and water. */
  List<Sentence> of(LeachingRequirement lr) {
    if (lr.status() == Status.UNKNOWN) {
      return List.of(lr.tolerableEce().isEmpty() ? noCropNumbers(lr) : noWater());
    }
    List<Sentence> said = new ArrayList<>();
    said.add(requirement(lr));
    lr.instead().ifPresent(i -> said.addAll(instead(i)));
    lr.grossMm()
        .ifPresent(
            mm ->
                said.add(
                    Sentence.of(
                        "gross-irrigation",
                        "Irrigation of the season with it: {0}; at an efficiency of {1} the losses"
                            + " that pass the root zone already count as leaching.",
                        Measure.of(mm, WATER_DEPTH),
                        Measure.of(100 * settings.water().efficiency(), PERCENT))));
    return said;
  }

  private static Sentence noCropNumbers(LeachingRequirement lr) {
    return Sentence.of(
        "no-crop-numbers",
        "No leaching requirement: "
            + lr.crop()
                .map(c -> "no threshold and slope are published for " + c.name())
                .orElse("no crop is given (key crop)")
            + ".");
  }

  private static Sentence noWater() {
    return Sentence.of(
        "no-water-ec",
        "No leaching requirement: the salinity of the irrigation water is not given (key water:"
            + " ec-dS-m).");
  }

  private Sentence requirement(LeachingRequirement lr) {
    String crop = lr.crop().orElseThrow().name();
    Measure ece = Measure.of(lr.tolerableEce().orElseThrow(), CONDUCTIVITY);
    Measure water = Measure.of(lr.ecWater().orElseThrow(), CONDUCTIVITY);
    if (lr.asked().orElse(1) >= 1) {
      return Sentence.of(
          "leaching-not-feasible",
          "Not feasible: water of {1} is too salty for "
              + crop
              + " (tolerable ECe {0}); no amount of leaching is enough.",
          ece,
          water);
    }
    Measure asked = Measure.of(100 * lr.asked().getAsDouble(), PERCENT);
    if (lr.status() == Status.NOT_FEASIBLE) {
      return Sentence.of(
          "leaching-not-feasible",
          "Not feasible: "
              + crop
              + " (tolerable ECe {0}) with water of {1} asks for {2} of the water to drain; no depth"
              + " is given above 50 %.",
          ece,
          water,
          asked);
    }
    boolean rarely = lr.status() == Status.RARELY_PRACTICABLE;
    return Sentence.of(
        rarely ? "leaching-rarely-practicable" : "leaching-requirement",
        "Every season {2} of the water must pass the root zone to keep "
            + crop
            + " at its tolerable ECe of {0} with water of {1} ("
            + (settings.water().method().isFrequent()
                ? "frequent irrigation, FAO 29"
                : "Rhoades 1974")
            + "); the same in every zone."
            + (rarely ? " Rarely practicable: change the crop or the water." : ""),
        ece,
        water,
        asked);
  }

  /** Of what the water alone makes of the soil, and of a second water to mix with. */
  List<Sentence> of(SteadyState steady, LeachingRequirement lr) {
    List<Sentence> said = new ArrayList<>();
    boolean rain = steady.ece() < steady.withoutRain() - 0.005;
    String how =
        switch (steady.source()) {
          case GIVEN -> "as given";
          case FROM_BALANCE -> "from what is applied, rain and evapotranspiration";
          case TAKEN -> "taken, because neither it nor what is applied is given";
        };
    said.add(
        Sentence.of(
            "steady-state",
            "In the long run this water alone keeps the root zone at about ECe {0}"
                + (rain ? " with the rain, {1} without" : "")
                + ", at a leaching fraction of {2} ("
                + how
                + "; FAO 29, table 3).",
            Measure.of(steady.ece(), CONDUCTIVITY),
            Measure.of(steady.withoutRain(), CONDUCTIVITY),
            Measure.of(100 * steady.fraction(), PERCENT)));
    settings.water().season().blend().ifPresent(b -> said.add(blend(b, lr)));
    return said;
  }

  private static Sentence blend(Blend blend, LeachingRequirement lr) {
    Measure first = Measure.of(blend.firstEcDsPerM(), CONDUCTIVITY);
    Measure second = Measure.of(blend.ecDsPerM(), CONDUCTIVITY);
    if (blend.share().isPresent()) {
      double share = blend.share().getAsDouble();
      return Sentence.of(
          "blend",
          "The water is a mix: {0} of it at {1}, the rest at {2}, together {3}.",
          Measure.of(100 * share, PERCENT),
          second,
          first,
          Measure.of(Blend.ec(blend.firstEcDsPerM(), blend.ecDsPerM(), share), CONDUCTIVITY));
    }
    if (lr.tolerableEce().isEmpty()) {
      return Sentence.of(
          "blend-unknown", "Without a crop with numbers no share of the second water follows.");
    }
    double stands =
        Rhoades1974.waterFor(LeachingRequirement.RARELY, lr.tolerableEce().getAsDouble());
    Measure most = Measure.of(stands, CONDUCTIVITY);
    OptionalDouble share = blend.shareFor(stands);
    if (share.isEmpty()) {
      return Sentence.of(
          "blend-not-enough",
          "No mix of the waters of {0} and {1} comes down to {2}, the most that the crop stands.",
          first,
          second,
          most);
    }
    return share.getAsDouble() == 0
        ? Sentence.of(
            "blend-not-needed",
            "The crop stands the water of {0} as it is, up to {1}: no second water is needed.",
            first,
            most)
        : Sentence.of(
            "blend-share",
            "The crop stands a mix of at most {0}: at least {1} of it from the water of {2}, the rest"
                + " from that of {3}.",
            most,
            Measure.of(100 * share.getAsDouble(), PERCENT),
            second,
            first);
  }

  private static List<Sentence> instead(Instead instead) {
    String crops = instead.crops().stream().map(Crop::name).collect(Collectors.joining("; "));
    return List.of(
        Sentence.of(
            "water-that-would-do",
            "It would work with water of at most {0}: mix with better water until the blend is"
                + " there.",
            Measure.of(instead.ecWater(), CONDUCTIVITY)),
        Sentence.of(
            "crops-that-would-do",
            crops.isEmpty()
                ? "None of the crops compared would manage with this water."
                : "With this water these crops would manage: " + crops + "."));
  }

  /** Of the one-off leaching of a zone. */
  List<Sentence> of(Reclamation plan, double areaHa) {
    Measure target = Measure.of(plan.targetEce(), CONDUCTIVITY);
    return switch (plan.status()) {
      case NOT_NEEDED ->
          List.of(
              Sentence.of(
                  "no-reclamation",
                  "No one-off leaching: the zone is at or below {0} with a chance of {1}.",
                  target,
                  Measure.of(100 * (1 - plan.chance()), PERCENT)));
      case TARGET_OUT_OF_REACH ->
          List.of(
              Sentence.of(
                  "target-below-water",
                  "Leaching with this water leaves at least about {0} in the soil: it cannot bring the"
                      + " zone to {1}. Leach with better water, or take a crop that stands more.",
                  Measure.of(settings.water().equilibriumEce(), CONDUCTIVITY),
                  target));
      case NEEDED, DOES_NOT_PAY ->
          plan.lowConfidence()
              ? List.of(amount(plan, areaHa), ONE_PORE_VOLUME)
              : List.of(amount(plan, areaHa));
    };
  }

  private static Sentence amount(Reclamation plan, double areaHa) {
    return Sentence.of(
        "reclamation",
        "To bring the top {0} to {1}: {2} of water through the soil by "
            + plan.application().label()
            + " ({3} over the zone); chance that it is needed {4}. Add what refills the dry soil"
            + " and what evaporates meanwhile.",
        Measure.of(plan.depthCm(), SOIL_DEPTH),
        Measure.of(plan.targetEce(), CONDUCTIVITY),
        new Measure(plan.middleMm(), plan.mm().p10(), plan.mm().p90(), WATER_DEPTH),
        Measure.of(plan.middleMm() * areaHa * 10, VOLUME),
        Measure.of(100 * plan.chance(), PERCENT));
  }

  /** Of boron in the soil of a field. */
  static Sentence boron(BoronNeed boron) {
    Measure found = Measure.of(boron.foundMgL(), BORON);
    Measure limit = Measure.of(boron.limitMgL(), BORON);
    return switch (boron.status()) {
      case FINE ->
          Sentence.of(
              "boron-fine", "Boron of the paste averages {0}; the crop stands {1}.", found, limit);
      case OUT_OF_REACH ->
          Sentence.of(
              "boron-out-of-reach",
              "Boron of the paste averages {0}, the crop stands {1}; this water alone leaves about"
                  + " {2}, so leaching with it cannot help.",
              found,
              limit,
              Measure.of(boron.leftMgL(), BORON));
      case LEACH ->
          Sentence.of(
              "boron-leaching",
              "Boron of the paste averages {0}, the crop stands {1}: washing it down takes about {2}"
                  + " through the soil, two to three times what salt takes; it may come back, and"
                  + " the drainage water needs a place.",
              found,
              limit,
              Measure.of(boron.leachingMm(), WATER_DEPTH));
    };
  }
}
