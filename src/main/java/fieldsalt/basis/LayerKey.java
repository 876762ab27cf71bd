package fieldsalt.basis;

import fieldsalt.quantity.DepthRange;
import fieldsalt.read.Sample;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One layer of one site at one date: readings of it by different methods are a pair. */
record LayerKey(String id, String field, Optional<LocalDate> date, DepthRange depth)
    implements Comparable<LayerKey> {
  static LayerKey of(Sample sample) {
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

  /** Readings by layer, layers in order, readings in the order given. */
  static Map<LayerKey, List<LayerReading>> group(Collection<LayerReading> readings) {
    Map<LayerKey, List<LayerReading>> found = new HashMap<>();
    for (LayerReading reading : readings) {
      found.computeIfAbsent(of(reading.sample()), k -> new ArrayList<>(2)).add(reading);
    }
    List<LayerKey> keys = new ArrayList<>(found.keySet());
    Collections.sort(keys);
    Map<LayerKey, List<LayerReading>> layers = new LinkedHashMap<>(2 * keys.size());
    keys.forEach(key -> layers.put(key, found.get(key)));
    return layers;
  }
}
