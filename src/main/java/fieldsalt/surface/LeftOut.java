package fieldsalt.surface;

/**
 * One site predicted from all the others.
 *
 * @param part position of its field among the observations' parts
 * @param site position of the site in that part
 * @param value of its paste row, else of its most precise row
 * @param predicted distribution of that very reading, its own and shared error included
 * @param crps score of the prediction on the scale of the fit
 */
record LeftOut(int part, int site, double value, Mixture predicted, double crps) {
  LeftOut(int part, int site, double value, Mixture predicted) {
    this(part, site, value, predicted, Crps.of(predicted, value));
  }

  double error() {
    return value - predicted.expectation();
  }

  double squaredStandardised() {
    return error() * error() / predicted.variance();
  }

  /** Chance that the prediction gave to lie below the value. */
  double chanceBelow() {
    return predicted.below(value);
  }
}
