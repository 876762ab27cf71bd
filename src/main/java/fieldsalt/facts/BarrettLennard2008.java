package fieldsalt.facts;

import fieldsalt.quantity.TextureGroup;
import java.util.List;
import java.util.Map;

/**
 * Salinity class read directly from EC1:5 by texture (Barrett-Lennard, Bennett &amp; Colmer 2008):
 * a second opinion on a reading, never a conversion to ECe.
 */
public final class BarrettLennard2008 {
  private static final List<Map<String, String>> ROWS = Table.rows("ec15_classes.csv");

  private BarrettLennard2008() {}

  /**
   * The class's word, e.g. {@code moderate}.
   *
   * @param ec15 dS/m, at least 0
   * @param texture coarse reads the column of sands, medium and unknown of loams, fine of clays
   */
  public static String classOf(double ec15, TextureGroup texture) {
    String word = ROWS.get(0).get("class");
    for (Map<String, String> row : ROWS) {
      if (ec15 >= Double.parseDouble(row.get(column(texture)))) {
        word = row.get("class");
      }
    }
    return word;
  }

  private static String column(TextureGroup texture) {
    return switch (texture) {
      case COARSE -> "sand";
      case MEDIUM, UNKNOWN -> "loam";
      case FINE -> "clay";
    };
  }
}
