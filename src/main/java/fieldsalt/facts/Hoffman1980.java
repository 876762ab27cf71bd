package fieldsalt.facts;

import fieldsalt.quantity.TextureGroup;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Depth of water that must pass through salty soil: (C - Ci)/(Co - Ci) x dl/ds = K. Hoffman G.J.
 * 1980, Guidelines for reclamation of salt-affected soils, Proc. Inter-American Salinity and Water
 * Management Technical Conference, pp. 49-64; FAO 29 rev. 1, fig. 7 (coefficients from memory). It
 * holds for C below Co and dl/ds above about K: smaller depths only displace the salt.
 */
public final class Hoffman1980 {
  private static final Map<String, Double> K =
      FactTable.rows("reclamation.csv").stream()
          .collect(
              Collectors.toMap(
                  row -> row.get("method") + " " + row.get("texture"),
                  row -> Double.valueOf(row.get("k"))));

  /** K of boron, any method. */
  public static final double K_BORON = K.get("BORON ANY");

  /** K of peat under continuous ponding. */
  public static final double K_PEAT = K.get("PONDING PEAT");

  private Hoffman1980() {}

  /** How the water is put on. */
  public enum Application {
    PONDING("continuous ponding"),
    INTERMITTENT("intermittent ponding"),
    SPRINKLING("sprinkling");

    private final String label;

    Application(String label) {
      this.label = label;
    }

    public String label() {
      return label;
    }
  }

  /** K by method and texture; unknown texture under ponding counts as medium. */
  public static double k(Application application, TextureGroup texture) {
    TextureGroup group = texture == TextureGroup.UNKNOWN ? TextureGroup.MEDIUM : texture;
    return application == Application.PONDING
        ? K.get("PONDING " + group)
        : K.get(application + " ANY");
  }

  /**
   * Depth of water percolating, in the unit of {@code soilDepth}; 0 where the soil is at or below
   * the target.
   *
   * @param start of the soil (ECe, or boron)
   * @param target the same unit; must be above {@code equilibrium} unless start is at the target
   * @param equilibrium what the soil comes to with this water, at least 0
   */
  public static double depth(
      double k, double soilDepth, double start, double target, double equilibrium) {
    if (start <= target) {
      return 0;
    }
    if (!(target > equilibrium && equilibrium >= 0)) {
      throw new IllegalArgumentException(
          "the target must be above what the water itself leaves, was "
              + target
              + " and "
              + equilibrium);
    }
    return k * soilDepth * (start - equilibrium) / (target - equilibrium);
  }
}
