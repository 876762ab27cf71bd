package fieldsalt.basis.soil;

/**
 * The two-pathway conductance of wet soil, solved for the soil water: with all pore water of one
 * EC, {@code EC = (θss+θws)² ECw ECss/(θss ECw + θws ECss) + (θw−θws) ECw}.
 *
 * @param thetaSolid θss, volume fraction of the solid in series, dimensionless
 * @param thetaSeries θws, volume fraction of the water in series
 * @param thetaWater θw, volume fraction of all water
 * @param ecSolidDsM ECss, conductivity of the solid, dS/m, greater than 0
 */
public record BulkSoil(
    double thetaSolid, double thetaSeries, double thetaWater, double ecSolidDsM) {

  /** EC of the whole at an EC of its water, both dS/m. */
  public double bulk(double ecWaterDsM) {
    double series = thetaSolid + thetaSeries;
    return series
            * series
            * ecWaterDsM
            * ecSolidDsM
            / (thetaSolid * ecWaterDsM + thetaSeries * ecSolidDsM)
        + (thetaWater - thetaSeries) * ecWaterDsM;
  }

  /** EC of the water at an EC of the whole, both dS/m, always greater than 0. */
  public double water(double ecBulkDsM) {
    double a = thetaSolid * (thetaWater - thetaSeries);
    double series = thetaSolid + thetaSeries;
    double b =
        series * series * ecSolidDsM
            + (thetaWater - thetaSeries) * thetaSeries * ecSolidDsM
            - thetaSolid * ecBulkDsM;
    double c = -thetaSeries * ecSolidDsM * ecBulkDsM;
    double root = Math.sqrt(b * b - 4 * a * c);
    return b > 0 ? -2 * c / (b + root) : (root - b) / (2 * a);
  }
}
