package fieldsalt.facts;

import fieldsalt.quantity.Texture;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Usual soil properties by texture, for where nothing was measured (common practice). */
public final class UsualSoil {
  /** Bulk density where the texture is unknown, Mg/m3. */
  public static final double BULK_DENSITY_UNKNOWN = 1.40;

  /** Relative standard error of a usual bulk density. */
  public static final double BULK_DENSITY_ERROR = 0.08;

  /** Standard error of the ln of a usual CEC. */
  public static final double CEC_ERROR_LN = 0.40;

  private static final Map<Texture, Map<String, String>> ROWS =
      FactTable.rows("soil_usual.csv").stream()
          .collect(Collectors.toMap(row -> Texture.valueOf(row.get("texture")), row -> row));

  private UsualSoil() {}

  /** Bulk density in Mg/m3. */
  public static double bulkDensity(Texture texture) {
    Map<String, String> row = ROWS.get(texture);
    return row == null ? BULK_DENSITY_UNKNOWN : Double.parseDouble(row.get("bulk_density"));
  }

  /**
   * CEC in cmolc/kg: 0.5 x clay % + 2 x organic matter % where clay is known, else the texture's
   * usual value; empty where neither is known.
   */
  public static OptionalDouble cec(Texture texture, OptionalDouble clayPct, OptionalDouble omPct) {
    if (clayPct.isPresent()) {
      return OptionalDouble.of(0.5 * clayPct.getAsDouble() + 2 * omPct.orElse(0));
    }
    Map<String, String> row = ROWS.get(texture);
    return row == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(Double.parseDouble(row.get("cec")));
  }
}
