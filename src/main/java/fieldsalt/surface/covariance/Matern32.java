package fieldsalt.surface.covariance;

/**
 * Matérn with smoothness 3/2: rho(h) = (1 + h/range) exp(-h/range). The correlation falls to 5 % at
 * about 4.7 times the range.
 */
public record Matern32(double rangeM) implements Variogram {
  public Matern32 {
    Variogram.checkRange(rangeM);
  }

  @Override
  public double rho(double hM) {
    double u = hM / rangeM;
    return (1 + u) * Math.exp(-u);
  }

  @Override
  public String name() {
    return "matern 3/2";
  }

  @Override
  public Variogram withRange(double newRangeM) {
    return new Matern32(newRangeM);
  }
}
