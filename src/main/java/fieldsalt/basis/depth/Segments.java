package fieldsalt.basis.depth;

import fieldsalt.basis.layer.LayerReading;
import fieldsalt.quantity.DepthRange;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.TreeSet;

/**
 * The root zone cut at every boundary of every layer of a field, so that a layer is a run of whole
 * segments. Weights are those of the root zone.
 */
final class Segments {
  /** Boundaries closer than this are one: 30 cm and 12 inches. */
  static final double TOLERANCE_CM = 1;

  private final double[] bounds;
  private final double[] weights;

  Segments(List<SiteRow> rows, RootZone rootZone) {
    bounds = bounds(rows, rootZone.depthCm());
    weights = new double[bounds.length - 1];
    for (int j = 0; j < weights.length; j++) {
      weights[j] = rootZone.weight(bounds[j], bounds[j + 1]);
    }
  }

  private static double[] bounds(List<SiteRow> rows, double depthCm) {
    TreeSet<Double> cuts = new TreeSet<>();
    for (SiteRow row : rows) {
      for (LayerReading layer : row.layers()) {
        cuts.add(layer.sample().depth().topCm());
        cuts.add(layer.sample().depth().bottomCm());
      }
    }
    List<Double> kept = new ArrayList<>(List.of(0.0));
    for (double cut : cuts) {
      boolean apart = cut - kept.get(kept.size() - 1) >= TOLERANCE_CM;
      if (apart && cut <= depthCm - TOLERANCE_CM) {
        kept.add(cut);
      }
    }
    kept.add(depthCm);
    return kept.stream().mapToDouble(Double::doubleValue).toArray();
  }

  int count() {
    return weights.length;
  }

  double weight(int segment) {
    return weights[segment];
  }

  double weight(BitSet segments) {
    return segments.stream().mapToDouble(j -> weights[j]).sum();
  }

  double topCm(BitSet segments) {
    return bounds[segments.nextSetBit(0)];
  }

  double bottomCm(BitSet segments) {
    return bounds[segments.length()];
  }

  /** The segments that lie wholly in a layer; none if it lies below the root zone. */
  BitSet of(DepthRange layer) {
    BitSet in = new BitSet(count());
    for (int j = 0; j < count(); j++) {
      if (bounds[j] >= layer.topCm() - TOLERANCE_CM
          && bounds[j + 1] <= layer.bottomCm() + TOLERANCE_CM) {
        in.set(j);
      }
    }
    return in;
  }

  /** All segments that any layer of a row covers. */
  BitSet covered(SiteRow row) {
    BitSet in = new BitSet(count());
    cover(row).forEach(in::or);
    return in;
  }

  /** Per layer of a row, its segments. */
  List<BitSet> cover(SiteRow row) {
    List<BitSet> cover = new ArrayList<>();
    for (LayerReading layer : row.layers()) {
      cover.add(of(layer.sample().depth()));
    }
    return cover;
  }
}
