package fieldsalt.report.input;

/**
 * Sodicity of a zone, where zones are divided by it.
 *
 * @param sodic whether the zone is of the sodic class
 * @param label of that class
 * @param property {@code ESP} or {@code SAR}
 * @param unit of it, may be empty
 * @param low 5 % quantile of its mean over the zone
 * @param high 95 % quantile of its mean over the zone
 * @param chance mean chance of its points to be sodic, 0 to 1
 */
public record PageSodicity(
    boolean sodic,
    String label,
    String property,
    String unit,
    double low,
    double mean,
    double high,
    double chance) {}
