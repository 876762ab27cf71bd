package fieldsalt.basis.layer;

import fieldsalt.read.sample.PairKind;
import java.util.IdentityHashMap;
import java.util.List;

/**
 * A pair from two cores differs by what the ground does between them: the rows that say so get that
 * error, once a layer whether one of its rows says it or all.
 */
final class OtherCores {
  private OtherCores() {}

  static List<LayerReading> widened(List<LayerReading> readings, double sdLn) {
    if (readings.stream().noneMatch(r -> r.sample().pair() == PairKind.CORE)) {
      return readings;
    }
    IdentityHashMap<LayerReading, Double> more = new IdentityHashMap<>();
    LayerKey.group(readings)
        .values()
        .forEach(
            layer -> {
              List<LayerReading> cores =
                  layer.stream().filter(r -> r.sample().pair() == PairKind.CORE).toList();
              boolean paired = layer.size() > 1;
              cores.forEach(r -> more.put(r, paired ? sdLn * sdLn / cores.size() : 0));
            });
    return readings.stream()
        .map(r -> more.getOrDefault(r, 0.0) > 0 ? r.plusVariance(more.get(r)) : r)
        .toList();
  }
}
