package fieldsalt.surface.fit;

/**
 * One site predicted from all the others.
 *
 * @param part position of its field among the observations' parts
 * @param site position of the site in that part
 * @param value of its paste row, else of its most precise row
 * @param predicted distribution of that very reading, its own and shared error included
 * @param crps score of the prediction on the scale of the fit
 */
public record LeftOut(int part, int site, double value, Mixture predicted, double crps) {
  public LeftOut(int part, int site, double value, Mixture predicted) {
    this(part, site, value, predicted, Crps.of(predicted, value));
  }

  public double error() {
    return value - predicted.expectation();
  }

  public double squaredStandardised() {
    return error() * error() / predicted.variance();
  }

  /** Chance that the prediction gave to lie below the value. */
  public double chanceBelow() {
    return predicted.below(value);
  }
}
