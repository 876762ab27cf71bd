package fieldsalt.plan.gypsum;

import java.util.OptionalDouble;

/**
 * What is to be spread on a zone.
 *
 * @param ratePerPass t/ha of product (pure gypsum where no purity is given); empty where nobody can
 *     say an amount, as are the tonnes
 * @param needed middle of the requirement, t/ha; empty where it cannot be told
 * @param low 10 % of the requirement, t/ha; empty where it cannot be told, as are high and chance
 * @param costPerHa by the user's prices; empty without
 */
public record RateRow(
    String field,
    String zone,
    double areaHa,
    OptionalDouble ratePerPass,
    int passes,
    OptionalDouble tonnes,
    OptionalDouble needed,
    OptionalDouble low,
    OptionalDouble high,
    OptionalDouble chance,
    double leachingMm,
    OptionalDouble costPerHa,
    String firstStep,
    boolean draft) {}
