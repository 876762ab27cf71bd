package fieldsalt.surface.area;

/**
 * Means over areas of the property in its own unit, with their joint error (lognormal moments in
 * closed form on the log scale).
 *
 * @param mean one an area
 * @param covariance of the means between areas: shared laboratory error makes them move together
 * @param low 5 % quantile of each mean
 * @param high 95 % quantile of each mean
 */
public record AreaMeans(double[] mean, double[][] covariance, double[] low, double[] high) {}
