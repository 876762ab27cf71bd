package fieldsalt.basis.layer;

import fieldsalt.quantity.DepthRange;
import fieldsalt.read.sample.Sample;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One layer of one site at one date: readings of it by different methods are a pair. */
public record LayerKey(String id, String field, Optional<LocalDate> date, DepthRange depth)
    implements Comparable<LayerKey> {
  public static LayerKey of(Sample sample) {
    return new LayerKey(sample.id(), sample.field(), sample.date(), sample.depth());
  }

  @Override
  public int compareTo(LayerKey other) {
    int byId = id.compareTo(other.id);
    int byField = byId != 0 ? byId : field.compareTo(other.field);
    int byDate =
        byField != 0
            ? byField
            : date.orElse(LocalDate.MIN).compareTo(other.date.orElse(LocalDate.MIN));
    int byTop = byDate != 0 ? byDate : Double.compare(depth.topCm(), other.depth.topCm());
    return byTop != 0 ? byTop : Double.compare(depth.bottomCm(), other.depth.bottomCm());
  }

  /** By id and depth alone: text keeps its hash, and few layers differ in the rest. */
  @Override
  public int hashCode() {
    return 31 * id.hashCode() + Double.hashCode(depth.topCm());
  }

  /**
   * Readings by layer, layers in order, readings in the order given. Readings that come in order
   * cost one pass.
   */
  public static Map<LayerKey, List<LayerReading>> group(Collection<LayerReading> readings) {
    Map<LayerKey, List<LayerReading>> layers = new LinkedHashMap<>(2 * readings.size());
    boolean inOrder = true;
    LayerKey last = null;
    for (LayerReading reading : readings) {
      LayerKey key = of(reading.sample());
      int step = last == null ? -1 : last.compareTo(key);
      inOrder &= step <= 0;
      if (step != 0) {
        last = key;
      }
      layers.computeIfAbsent(key, k -> new ArrayList<>(2)).add(reading);
    }
    return inOrder ? layers : sorted(layers);
  }

  private static Map<LayerKey, List<LayerReading>> sorted(
      Map<LayerKey, List<LayerReading>> layers) {
    List<LayerKey> keys = new ArrayList<>(layers.keySet());
    Collections.sort(keys);
    Map<LayerKey, List<LayerReading>> sorted = new LinkedHashMap<>(2 * keys.size());
    keys.forEach(key -> sorted.put(key, layers.get(key)));
    return sorted;
  }
}
