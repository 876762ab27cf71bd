package fieldsalt.surface.next;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.surface.choice.Tried;
import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.Observations;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/**
 * How a direct (paste) reading not yet made would be read: like those of the laboratory that made
 * most of the present ones, or with the usual errors of a paste reading where there are none.
 *
 * @param ownVariance of the reading
 * @param loadings on the standardised offsets
 * @param newSharedVariance of an offset of its own that no present reading has; 0 if there are
 *     direct readings already
 */
record DirectReading(double ownVariance, double[] loadings, double newSharedVariance) {
  /** Repeatability and reproducibility of a paste reading, ln (common practice). */
  private static final double OWN_SD = 0.07;

  private static final double SHARED_SD = 0.10;

  static DirectReading of(Observations data) {
    TreeMap<String, List<double[]>> byLaboratory = new TreeMap<>();
    for (FieldRows part : data.parts()) {
      for (int i = 0; i < part.rows().size(); i++) {
        SiteReadings.Row row = part.rows().get(i);
        if (row.paste()) {
          byLaboratory
              .computeIfAbsent(row.laboratory(), l -> new ArrayList<>())
              .add(reading(part, i));
        }
      }
    }
    List<double[]> most = List.of();
    for (List<double[]> readings : byLaboratory.values()) {
      most = readings.size() > most.size() ? readings : most;
    }
    if (most.isEmpty()) {
      return new DirectReading(OWN_SD * OWN_SD, new double[data.offsets()], SHARED_SD * SHARED_SD);
    }
    double[] own = most.stream().mapToDouble(r -> r[0]).sorted().toArray();
    double[] loadings = java.util.Arrays.copyOfRange(most.get(0), 1, most.get(0).length);
    return new DirectReading(Tried.median(own), loadings, 0);
  }

  private static double[] reading(FieldRows part, int row) {
    double[] out = new double[1 + part.loadings().length];
    out[0] = part.own()[row];
    for (int k = 0; k < part.loadings().length; k++) {
      out[1 + k] = part.loadings()[k][row];
    }
    return out;
  }
}
