package fieldsalt.surface.covariance;

/** rho(h) = 1 - 1.5 h/range + 0.5 (h/range)³ up to the range, 0 beyond it. */
public record Spherical(double rangeM) implements Variogram {
  public Spherical {
    Variogram.checkRange(rangeM);
  }

  @Override
  public double rho(double hM) {
    double u = hM / rangeM;
    return u >= 1 ? 0 : 1 - u * (1.5 - 0.5 * u * u);
  }

  @Override
  public String name() {
    return "spherical";
  }

  @Override
  public Variogram withRange(double newRangeM) {
    return new Spherical(newRangeM);
  }
}
