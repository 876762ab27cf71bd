package fieldsalt.plan.zone;

import fieldsalt.classes.YieldModel;
import fieldsalt.plan.soil.FieldGround;
import fieldsalt.plan.soil.FieldSoil;
import fieldsalt.plan.soil.ZoneGround;
import fieldsalt.plan.soil.ZoneSalt;
import java.util.List;
import java.util.Optional;

/**
 * Everything worked out for a zone before the machine's steps.
 *
 * @param pure futures of the gypsum requirement, t/ha pure; zeros where it is not sized
 * @param esp futures of ESP; zeros where sodium is not known
 */
public record ZoneWork(
    ZoneGround ground,
    FieldGround field,
    FieldSoil soil,
    ZoneSalt salt,
    ZoneSalt toReclaim,
    Optional<YieldModel> model,
    Reclamation reclamation,
    Optional<MoneyOutlook> leachingMoney,
    GypsumPlan gypsum,
    double[] pure,
    double[] esp,
    Situation situation,
    List<Step> steps) {

  public double areaHa() {
    return ground.zone().areaHa();
  }
}
