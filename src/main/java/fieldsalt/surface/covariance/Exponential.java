package fieldsalt.surface.covariance;

/** rho(h) = exp(-h / range). The correlation falls to 5 % at 3 times the range. */
public record Exponential(double rangeM) implements Variogram {
  public Exponential {
    Variogram.checkRange(rangeM);
  }

  @Override
  public double rho(double hM) {
    return Math.exp(-hM / rangeM);
  }

  @Override
  public String name() {
    return "exponential";
  }

  @Override
  public Variogram withRange(double newRangeM) {
    return new Exponential(newRangeM);
  }
}
