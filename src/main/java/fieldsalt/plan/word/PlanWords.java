package fieldsalt.plan.word;

import static fieldsalt.quantity.Dimension.CONDUCTIVITY;
import static fieldsalt.quantity.Dimension.MASS;

import fieldsalt.facts.Crop;
import fieldsalt.plan.field.FieldPlan;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.zone.GypsumPlan.Advice;
import fieldsalt.plan.zone.LeachingRequirement;
import fieldsalt.plan.zone.MoneyOutlook;
import fieldsalt.plan.zone.MoneyOutlook.Treated;
import fieldsalt.plan.zone.Reclamation.Status;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.quantity.Measure;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What is said of a plan, in sentences; it decides nothing. */
public final class PlanWords {
  private final PlanSettings settings;
  private final Cautions cautions;

  /**
   * Words of a plan.
   *
   * @param settings that the plan was made with
   */
  public PlanWords(PlanSettings settings) {
    this.settings = settings;
    cautions = new Cautions(settings);
  }

  /** What is said of a whole field. */
  public List<Sentence> of(FieldPlan field) {
    List<Sentence> said = new ArrayList<>(of(field.leaching()));
    if (field.ground().evidence().noBetterThanMean()) {
      Measure ece =
          new Measure(field.ece().mean(), field.ece().p10(), field.ece().p90(), CONDUCTIVITY);
      said.add(
          field.zones().size() > 1
              ? SituationWords.zonesBySodium(ece)
              : SituationWords.noBetterThanMean(ece));
    }
    field.steady().ifPresent(s -> said.addAll(new LeachingWords(settings).of(s, field.leaching())));
    field.boron().map(LeachingWords::boron).ifPresent(said::add);
    field.unmetT().ifPresent(wanted -> said.add(machineSteps(wanted, field.plannedT())));
    return said;
  }

  /** What is said of the leaching that a crop and a water need every season. */
  public List<Sentence> of(LeachingRequirement leaching) {
    return new LeachingWords(settings).of(leaching);
  }

  private static Sentence machineSteps(double wantedT, double plannedT) {
    return Sentence.of(
        "machine-steps",
        "The machine's smallest, largest rate and step do not allow {0}; the rates add up to {1}.",
        Measure.of(wantedT, MASS),
        Measure.of(plannedT, MASS));
  }

  /** What is said of a zone: what is the matter, what to do, why and how sure. */
  public List<Sentence> of(ZonePlan zone) {
    String crop = zone.leaching().crop().map(Crop::name).orElse("the crop");
    List<Sentence> said = new ArrayList<>();
    said.add(
        SituationWords.of(
            zone.situation(),
            zone.meanEce(),
            crop,
            settings.ground().isProved(),
            zone.gypsum().advice() == Advice.CONSIDER));
    said.addAll(new GypsumWords(settings).of(zone.gypsum()));
    if (zone.gypsum().advice() == Advice.DOES_NOT_PAY) {
      said.add(doesNotPay(Treated.GYPSUM));
    }
    said.addAll(new LeachingWords(settings).of(zone.reclamation(), zone.zone().areaHa()));
    if (zone.reclamation().status() == Status.DOES_NOT_PAY) {
      said.add(doesNotPay(Treated.LEACHING));
    }
    zone.money().forEach(m -> said.add(of(m)));
    return said;
  }

  /** What is said of the money that a treatment brings and costs. */
  public Sentence of(MoneyOutlook money) {
    return MoneyWords.of(money, settings.money().years());
  }

  private Sentence doesNotPay(Treated what) {
    String word = what.word();
    return Sentence.of(
        "does-not-pay",
        word.substring(0, 1).toUpperCase(Locale.ROOT)
            + word.substring(1)
            + " is not planned: at your prices it is not expected to pay back within "
            + settings.money().years()
            + " years.");
  }

  /** Cautions of a whole field. */
  public List<Sentence> cautions(FieldPlan field) {
    return cautions.of(field.ground());
  }

  /** Cautions beside the numbers of one zone. */
  public List<Sentence> cautions(ZonePlan zone) {
    return cautions.of(zone.gypsum());
  }
}
