package fieldsalt.basis.relation;

import fieldsalt.basis.soil.Rows;
import fieldsalt.quantity.Method;
import fieldsalt.read.sample.Soil;

/**
 * The user's own relation ECe = slope EC + intercept with its error. With a negative intercept the
 * line is left for half its slope near 0, with a positive one for twice its slope, so that ECe
 * stays above 0 and rises with EC; both are warned of.
 *
 * @param method it was made for
 * @param slope greater than 0
 * @param interceptDsM dS/m, 0 for a factor
 * @param sdLn standard deviation of ln ECe about it, greater than 0
 */
record OwnEquation(Method method, double slope, double interceptDsM, double sdLn)
    implements EceRelation {
  OwnEquation {
    if (!(slope > 0 && sdLn > 0 && Double.isFinite(interceptDsM))) {
      throw new IllegalArgumentException(
          "an own relation needs a factor and an error above 0, had " + slope + ", " + sdLn);
    }
  }

  @Override
  public String name() {
    return "OwnEquation";
  }

  @Override
  public String citation() {
    String line = "the laboratory's own: ECe = " + Rows.number(slope) + " EC";
    return interceptDsM == 0
        ? line
        : line + (interceptDsM < 0 ? " - " : " + ") + Rows.number(Math.abs(interceptDsM));
  }

  @Override
  public String confidence() {
    return "own";
  }

  @Override
  public String domain() {
    return "as the user says";
  }

  @Override
  public boolean takes(MethodKey key) {
    return key.method() == method;
  }

  @Override
  public Outcome convert(double ecDsM, Soil soil) {
    double straight = slope * ecDsM + interceptDsM;
    double ece = Math.min(Math.max(straight, slope * ecDsM / 2), 2 * slope * ecDsM);
    Outcome.Ece out = Outcome.ece(ece, sdLn);
    return ece == straight || interceptDsM == 0
        ? out
        : out.warn("too near 0 for its intercept; a multiplier was used there");
  }
}
