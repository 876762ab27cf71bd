package fieldsalt.basis;

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
  private static final double TOLERANCE_CM = 1e-6;

  private final double[] bounds;
  private final double[] weights;

  Segments(List<SiteRow> rows, RootZone rootZone) {
    TreeSet<Double> cuts = new TreeSet<>(List.of(0.0, rootZone.depthCm()));
    for (SiteRow row : rows) {
      for (LayerReading layer : row.layers()) {
        cuts.add(Math.min(layer.sample().depth().topCm(), rootZone.depthCm()));
        cuts.add(Math.min(layer.sample().depth().bottomCm(), rootZone.depthCm()));
      }
    }
    bounds = cuts.stream().mapToDouble(Double::doubleValue).toArray();
    weights = new double[bounds.length - 1];
    for (int j = 0; j < weights.length; j++) {
      weights[j] = rootZone.weight(bounds[j], bounds[j + 1]);
    }
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
