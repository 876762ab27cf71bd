package fieldsalt.plan;

import fieldsalt.plan.field.FieldPlan;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.word.PlanWords;
import fieldsalt.plan.word.Sentence;
import fieldsalt.plan.zone.ZonePlan;
import java.util.List;

/** What is said of plans that were made with some settings. */
public final class Said {
  private Said() {}

  public static List<Sentence> of(ZonePlan zone, PlanSettings settings) {
    return new PlanWords(settings).of(zone);
  }

  public static List<Sentence> of(FieldPlan field, PlanSettings settings) {
    return new PlanWords(settings).of(field);
  }

  public static List<Sentence> cautions(ZonePlan zone, PlanSettings settings) {
    return new PlanWords(settings).cautions(zone);
  }

  public static List<Sentence> cautions(FieldPlan field, PlanSettings settings) {
    return new PlanWords(settings).cautions(field);
  }

  /** What is said of the first zone of a ranch. */
  public static List<Sentence> ofFirstZone(RanchPlan plan) {
    return of(plan.zones().get(0), plan.settings());
  }

  /** What is said of the first field of a ranch. */
  public static List<Sentence> ofFirstField(RanchPlan plan) {
    return of(plan.fields().get(0), plan.settings());
  }

  /** Cautions of the first field of a ranch. */
  public static List<Sentence> cautionsOfFirstField(RanchPlan plan) {
    return cautions(plan.fields().get(0), plan.settings());
  }
}
