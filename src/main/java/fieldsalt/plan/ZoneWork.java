package fieldsalt.plan;

import fieldsalt.classes.YieldModel;
import java.util.List;
import java.util.Optional;

/**
 * Everything worked out for a zone before the machine's steps.
 *
 * @param pure futures of the gypsum requirement, t/ha pure; zeros where it is not sized
 * @param esp futures of ESP; zeros where sodium is not known
 */
record ZoneWork(
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

  double areaHa() {
    return ground.zone().areaHa();
  }
}
