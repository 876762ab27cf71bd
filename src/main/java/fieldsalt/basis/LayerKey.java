package fieldsalt.basis;

import fieldsalt.quantity.DepthRange;
import fieldsalt.read.Sample;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** One layer of one site at one date: readings of it by different methods are a pair. */
record LayerKey(String id, String field, Optional<LocalDate> date, DepthRange depth)
    implements Comparable<LayerKey> {
  private static final Comparator<LayerKey> ORDER =
      Comparator.comparing(LayerKey::id)
          .thenComparing(LayerKey::field)
          .thenComparing(k -> k.date.orElse(LocalDate.MIN))
          .thenComparingDouble(k -> k.depth.topCm())
          .thenComparingDouble(k -> k.depth.bottomCm());

  static LayerKey of(Sample sample) {
    return new LayerKey(sample.id(), sample.field(), sample.date(), sample.depth());
  }

  @Override
  public int compareTo(LayerKey other) {
    return ORDER.compare(this, other);
  }

  /** Readings by layer, layers in order, readings in the order given. */
  static Map<LayerKey, List<LayerReading>> group(Collection<LayerReading> readings) {
    Map<LayerKey, List<LayerReading>> layers = new TreeMap<>();
    for (LayerReading reading : readings) {
      layers.computeIfAbsent(of(reading.sample()), k -> new ArrayList<>(2)).add(reading);
    }
    return layers;
  }
}
