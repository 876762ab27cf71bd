package fieldsalt.surface.choice;

import fieldsalt.surface.fit.SurfaceMethod;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The simplest method whose mean leave-one-out CRPS is within one paired standard error of the
 * best.
 *
 * @param why one plain sentence
 */
public record Choice(Tried chosen, String why) {

  /** From the simplest to the most elaborate; all judged on the same sites. */
  public static Choice among(List<Tried> simplestFirst) {
    Tried best = simplestFirst.get(0);
    for (Tried t : simplestFirst) {
      best = t.meanCrps() < best.meanCrps() ? t : best;
    }
    for (Tried t : simplestFirst) {
      if (t.meanCrps() - best.meanCrps() <= pairedError(t, best)) {
        return new Choice(t, why(t, best));
      }
    }
    throw new IllegalStateException("the best is within no error of itself");
  }

  /** The method that was asked for. */
  public static Choice asked(Tried tried) {
    return new Choice(tried, name(tried.method()) + " was asked for.");
  }

  static double pairedError(Tried one, Tried other) {
    Map<String, Double> others = other.crpsBySite();
    double[] differences =
        one.crpsBySite().entrySet().stream()
            .filter(e -> others.containsKey(e.getKey()))
            .mapToDouble(e -> e.getValue() - others.get(e.getKey()))
            .sorted()
            .toArray();
    int n = differences.length;
    double mean = Arrays.stream(differences).average().orElse(0);
    double sum = Arrays.stream(differences).map(d -> (d - mean) * (d - mean)).sum();
    return n < 2 ? Double.POSITIVE_INFINITY : Math.sqrt(sum / (n - 1) / n);
  }

  private static String why(Tried chosen, Tried best) {
    int sites = chosen.leftOut().size();
    if (chosen.method() == SurfaceMethod.MEAN) {
      return "No method predicts sites that it has not seen clearly better than the field's own mean"
          + " (leave-one-out over "
          + sites
          + " sites): the samples show how much, not where.";
    }
    String first =
        name(chosen.method())
            + " predicts sites that it has not seen clearly better than the field's mean"
            + " (leave-one-out score over "
            + sites
            + " sites)";
    return chosen.method() == best.method()
        ? first + "."
        : first + "; " + name(best.method()).toLowerCase(Locale.ROOT) + " is not clearly better.";
  }

  static String name(SurfaceMethod method) {
    return switch (method) {
      case MEAN -> "The field's mean";
      case DRIFT -> "Kriging with drift";
      case IDW -> "Inverse distance";
      default -> "Kriging";
    };
  }
}
