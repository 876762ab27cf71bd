package fieldsalt.facts;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Rayment &amp; Lyons 2011, table 3.1: limits of EC1:5 by clay content and the ECe limits that they
 * match, both dS/m.
 */
public final class RaymentLyons2011Table31 {
  private static final double[] ECE = {0.95, 1.9, 4.5, 7.7, 12.2};
  private static final List<Band> BANDS =
      FactTable.rows("rayment_lyons_2011_table_3_1.csv").stream().map(Band::of).toList();

  private RaymentLyons2011Table31() {}

  /** One row: clay from (inclusive) to (exclusive) in %, EC1:5 limits in dS/m. */
  public record Band(double clayFromPct, double clayToPct, List<Double> ec1to5) {
    public Band {
      ec1to5 = List.copyOf(ec1to5);
    }

    private static Band of(Map<String, String> row) {
      return new Band(
          Double.parseDouble(row.get("clay_from_pct")),
          Double.parseDouble(row.get("clay_to_pct")),
          List.of("0.95", "1.9", "4.5", "7.7", "12.2").stream()
              .map(limit -> Double.parseDouble(row.get("ece_" + limit)))
              .toList());
    }
  }

  /** The ECe limits of the table's columns, dS/m, rising. */
  public static double[] eceLimits() {
    return ECE.clone();
  }

  /** The row for a clay content; the last row includes its upper limit; empty outside 10-80 %. */
  public static Optional<Band> band(double clayPct) {
    return BANDS.stream()
        .filter(b -> clayPct >= b.clayFromPct && (clayPct < b.clayToPct || clayPct == 80))
        .filter(b -> clayPct < 80 || b.clayToPct == 80)
        .findFirst();
  }
}
