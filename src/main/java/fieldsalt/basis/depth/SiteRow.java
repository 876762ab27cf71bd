package fieldsalt.basis.depth;

import fieldsalt.basis.layer.LayerReading;
import fieldsalt.basis.relation.MethodKey;
import fieldsalt.geo.PlaceM;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** The layers that one laboratory read by one method at one site, from the surface down. */
public record SiteRow(
    SiteKey site, MethodKey method, String laboratory, List<LayerReading> layers) {

  /** Of composites, which have no place. */
  private static final PlaceM NOWHERE = new PlaceM(0, 0);

  /** One id at one place and date. */
  public record SiteKey(String id, String field, Optional<LocalDate> date, PlaceM place)
      implements Comparable<SiteKey> {
    private static final Comparator<SiteKey> ORDER =
        Comparator.comparing(SiteKey::id)
            .thenComparing(k -> k.date.orElse(LocalDate.MIN))
            .thenComparing(SiteKey::field)
            .thenComparingDouble(k -> k.place.xM())
            .thenComparingDouble(k -> k.place.yM());

    @Override
    public int compareTo(SiteKey other) {
      return ORDER.compare(this, other);
    }
  }

  private record Key(SiteKey site, MethodKey method, String laboratory) implements Comparable<Key> {
    private static final Comparator<Key> ORDER =
        Comparator.comparing(Key::site).thenComparing(Key::method).thenComparing(Key::laboratory);

    @Override
    public int compareTo(Key other) {
      return ORDER.compare(this, other);
    }
  }

  private static final Comparator<LayerReading> DOWNWARDS =
      Comparator.<LayerReading>comparingDouble(l -> l.sample().depth().topCm())
          .thenComparingDouble(l -> l.sample().depth().bottomCm())
          .thenComparingDouble(LayerReading::lnEce)
          .thenComparing(l -> l.sample().source().toString());

  public SiteRow {
    layers = List.copyOf(layers);
  }

  static SiteKey site(LayerReading layer) {
    return new SiteKey(
        layer.sample().id(),
        layer.sample().field(),
        layer.sample().date(),
        layer.sample().place().orElse(NOWHERE));
  }

  /** All rows, sorted by site, method and laboratory. */
  public static List<SiteRow> group(Collection<LayerReading> readings) {
    Map<Key, List<LayerReading>> groups = new TreeMap<>();
    for (LayerReading reading : readings) {
      Key key = new Key(site(reading), reading.method(), reading.sample().laboratory());
      groups.computeIfAbsent(key, k -> new ArrayList<>()).add(reading);
    }
    List<SiteRow> rows = new ArrayList<>();
    groups.forEach(
        (key, layers) -> {
          layers.sort(DOWNWARDS);
          rows.add(new SiteRow(key.site, key.method, key.laboratory, layers));
        });
    return rows;
  }
}
