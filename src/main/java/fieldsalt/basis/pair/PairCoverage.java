package fieldsalt.basis.pair;

import fieldsalt.basis.layer.LayerKey;
import fieldsalt.basis.layer.LayerReading;
import fieldsalt.basis.relation.MethodKey;
import fieldsalt.basis.soil.Rows;
import fieldsalt.basis.soil.SoilGroup;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.quantity.TextureGroup;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/** Whether the pairs stand for the readings that they calibrate: not all salty, not one texture. */
final class PairCoverage {
  private static final double SALTY_DS_M = 4;

  private PairCoverage() {}

  private static final class Seen {
    private final TreeSet<TextureGroup> paired = new TreeSet<>();
    private final TreeSet<TextureGroup> all = new TreeSet<>();
    private double leastPaired = Double.POSITIVE_INFINITY;
    private double least = Double.POSITIVE_INFINITY;
    private int pairs;
  }

  static void check(Map<LayerKey, List<LayerReading>> layers, List<Finding> findings) {
    Map<MethodKey, Seen> methods = new TreeMap<>();
    layers.values().forEach(rows -> look(rows, methods));
    methods.forEach((method, seen) -> report(method, seen, findings));
  }

  private static void look(List<LayerReading> rows, Map<MethodKey, Seen> methods) {
    boolean paste = rows.stream().anyMatch(r -> r.method().isBasis());
    for (LayerReading r : rows) {
      if (r.method().isBasis()) {
        continue;
      }
      Seen seen = methods.computeIfAbsent(r.method(), m -> new Seen());
      TextureGroup group = SoilGroup.of(r.sample().soil());
      seen.all.add(group);
      seen.least = Math.min(seen.least, r.ece());
      if (paste) {
        seen.pairs++;
        seen.paired.add(group);
        seen.leastPaired = Math.min(seen.leastPaired, r.ece());
      }
    }
  }

  private static void report(MethodKey method, Seen seen, List<Finding> findings) {
    if (seen.pairs < 2) {
      return;
    }
    List<String> gaps = new ArrayList<>();
    if (seen.leastPaired >= SALTY_DS_M && seen.least < SALTY_DS_M) {
      gaps.add("all are above ECe 4 dS/m, but readings go down to " + Rows.number(seen.least));
    }
    if (seen.paired.size() == 1 && seen.all.size() > 1) {
      gaps.add(
          "all are of "
              + seen.paired.first().name().toLowerCase(java.util.Locale.ROOT)
              + " texture, but other textures were read too");
    }
    if (!gaps.isEmpty()) {
      findings.add(
          new Finding(
              Code.PAIRS_ONE_SIDED,
              new Place.Source(seen.pairs + " pairs of " + method.label() + " and paste"),
              String.join("; ", gaps),
              "used as they are; read the next pairs where none is"));
    }
  }
}
