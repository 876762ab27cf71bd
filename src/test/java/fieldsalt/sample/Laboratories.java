package fieldsalt.sample;

import fieldsalt.quantity.Method;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;

/**
 * What stands between the true ECe of a bag of soil and the number on the sheet: the published
 * factor, the offsets shared by a laboratory x method and by a method x texture group, and the
 * reading's own error. Factors and standard deviations of ln are the product's defaults: two thirds
 * of the conversion variance shared, half of that each way, the rest a reading's own.
 */
final class Laboratories {
  private final Random random;
  private final Map<String, Double> drawn = new TreeMap<>();

  Laboratories(Random random) {
    this.random = random;
  }

  /** Published factor and its error (ece.md §10), laboratory error shared and own (§7). */
  private record Way(double factor, double conversionSd, double labSharedSd, double labOwnSd) {}

  private static Way way(Method method, String texture) {
    return switch (method) {
      case PASTE -> new Way(1, 0, 0.10, 0.07);
      case ONE_TO_FIVE -> oneToFive(texture);
      case ONE_TO_ONE ->
          group(texture).equals("medium")
              ? new Way(2.05, 0.20, 0.08, 0.06)
              : new Way(1.95, 0.20, 0.08, 0.06);
      default -> throw new IllegalArgumentException("no such reading is made here: " + method);
    };
  }

  private static Way oneToFive(String texture) {
    return switch (texture) {
      case "sandy loam" -> new Way(13, 0.33, 0.07, 0.05);
      case "loam" -> new Way(9.5, 0.22, 0.07, 0.05);
      case "clay loam" -> new Way(8.6, 0.20, 0.07, 0.05);
      default -> throw new IllegalArgumentException("no such soil lies here: " + texture);
    };
  }

  private static String group(String texture) {
    return switch (texture) {
      case "sandy loam" -> "coarse";
      case "loam" -> "medium";
      default -> "fine";
    };
  }

  /** The reading, dS/m, that this laboratory makes of a bag with this true ECe. */
  double read(String lab, Method method, String texture, double trueEce) {
    Way way = way(method, texture);
    double part = way.conversionSd / Math.sqrt(3);
    double ln =
        Math.log(trueEce / way.factor)
            + part * offset(lab + " x " + method)
            + part * offset(method + " x " + group(texture))
            + way.labSharedSd * offset("reading of " + lab + " x " + method)
            + Math.hypot(part, way.labOwnSd) * random.nextGaussian();
    return Math.exp(ln);
  }

  private double offset(String name) {
    return drawn.computeIfAbsent(name, n -> random.nextGaussian());
  }

  /** A number as a sheet prints it: three figures. */
  static String printed(double value) {
    int decimals = Math.max(0, 2 - (int) Math.floor(Math.log10(value)));
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }
}
