package fieldsalt.basis.depth;

import fieldsalt.basis.layer.LayerReading;
import fieldsalt.quantity.DepthRange;
import java.util.List;

/**
 * Top third against bottom third of the root zone, by thickness; the median over sites whose layers
 * reach into both. When the deepest layers end above the bottom third, the thirds are those of the
 * sampled depth, if it is at least half of the root zone.
 */
final class Profiles {
  private final RootZone rootZone;

  Profiles(RootZone rootZone) {
    this.rootZone = rootZone;
  }

  ProfileShape shape(List<SiteRow> rows) {
    double deepest =
        rows.stream()
            .flatMap(row -> row.layers().stream())
            .mapToDouble(layer -> layer.sample().depth().bottomCm())
            .max()
            .orElse(0);
    double depth = Math.min(deepest, rootZone.depthCm());
    if (depth < rootZone.depthCm() / 2) {
      return ProfileShape.UNKNOWN;
    }
    double[] ratios =
        rows.stream()
            .mapToDouble(row -> mean(row, 0, depth / 3) / mean(row, depth * 2 / 3, depth))
            .filter(Double::isFinite)
            .sorted()
            .toArray();
    if (ratios.length == 0) {
      return ProfileShape.UNKNOWN;
    }
    int n = ratios.length;
    return ProfileShape.of(Math.sqrt(ratios[(n - 1) / 2] * ratios[n / 2]));
  }

  /** Thickness-weighted mean ECe between two depths; NaN if a layer spans more than half of all. */
  private double mean(SiteRow row, double topCm, double bottomCm) {
    double sum = 0;
    double thickness = 0;
    for (LayerReading layer : row.layers()) {
      DepthRange d = layer.sample().depth();
      boolean coarse = d.thicknessCm() > 1.5 * 3 * (bottomCm - topCm) / 2;
      double in = Math.min(d.bottomCm(), bottomCm) - Math.max(d.topCm(), topCm);
      if (in > 0 && !coarse) {
        sum += in * layer.ece();
        thickness += in;
      }
    }
    return sum / thickness;
  }
}
