package fieldsalt.basis.site;

import fieldsalt.basis.depth.SiteRow;
import fieldsalt.basis.setting.ReadingError;
import fieldsalt.basis.soil.Rows;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.quantity.DepthRange;
import fieldsalt.read.sample.Sample;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.DoubleBinaryOperator;
import java.util.function.Function;

/**
 * Hand-over of a property other than ECe: one row per site and laboratory, the thickness-weighted
 * mean over a layer of the layers that reach into it.
 */
public final class PropertyReadings {
  private final String property;
  private final String unit;
  private final Scale scale;
  private final ReadingError error;
  private final List<Finding> findings = new ArrayList<>();

  /** One value of one layer. */
  public record Value(Sample sample, double value) {}

  private record Key(SiteRow.SiteKey site, String laboratory) implements Comparable<Key> {
    @Override
    public int compareTo(Key other) {
      int bySite = site.compareTo(other.site);
      return bySite != 0 ? bySite : laboratory.compareTo(other.laboratory);
    }
  }

  /**
   * For one property.
   *
   * @param error of one value, on the scale
   */
  public PropertyReadings(String property, String unit, Scale scale, ReadingError error) {
    this.property = property;
    this.unit = unit;
    this.scale = scale;
    this.error = error;
  }

  /**
   * Means over depth, by site and laboratory.
   *
   * @param values of layers; those without a place take no part
   * @param weights weight of a layer from its top and bottom (cm), by field
   */
  public SiteReadings over(
      Collection<Value> values, Function<String, DoubleBinaryOperator> weights) {
    Map<Key, List<Value>> groups = new TreeMap<>();
    for (Value value : values) {
      if (value.sample.place().isPresent() && isUsable(value)) {
        Sample s = value.sample;
        SiteRow.SiteKey site = new SiteRow.SiteKey(s.id(), s.field(), s.date(), s.place().get());
        groups.computeIfAbsent(new Key(site, s.laboratory()), k -> new ArrayList<>()).add(value);
      }
    }
    Map<Key, Double> means = new TreeMap<>();
    Map<Key, Double> own = new TreeMap<>();
    groups.forEach((key, rows) -> mean(key, rows, weights.apply(key.site.field()), means, own));
    return siteReadings(means, own);
  }

  private boolean isUsable(Value value) {
    if (scale == Scale.NATURAL || value.value > 0) {
      return true;
    }
    findings.add(
        Rows.finding(
            Code.NOT_POSITIVE,
            value.sample,
            property + " " + Rows.number(value.value) + " " + unit,
            "left out: its logarithm is mapped; use scale: natural for what may be 0"));
    return false;
  }

  private void mean(
      Key key,
      List<Value> rows,
      DoubleBinaryOperator weights,
      Map<Key, Double> means,
      Map<Key, Double> own) {
    Map<DepthRange, LinkedHashSet<Double>> byLayer =
        new TreeMap<>(
            Comparator.comparingDouble(DepthRange::topCm)
                .thenComparingDouble(DepthRange::bottomCm));
    rows.forEach(
        v -> byLayer.computeIfAbsent(v.sample.depth(), d -> new LinkedHashSet<>()).add(v.value));
    double total = 0;
    double sum = 0;
    double squares = 0;
    for (Map.Entry<DepthRange, LinkedHashSet<Double>> e : byLayer.entrySet()) {
      double weight = weights.applyAsDouble(e.getKey().topCm(), e.getKey().bottomCm());
      double value = e.getValue().stream().mapToDouble(Double::doubleValue).average().orElseThrow();
      double size = scale == Scale.LOG ? value : 1;
      total += weight;
      sum += weight * value;
      squares += weight * weight * size * size / e.getValue().size();
    }
    if (total <= 0) {
      return;
    }
    double mean = sum / total;
    double relative = scale == Scale.LOG ? mean : 1;
    means.put(key, scale == Scale.LOG ? Math.log(mean) : mean);
    own.put(key, error.own() * error.own() * squares / (total * total * relative * relative));
  }

  private SiteReadings siteReadings(Map<Key, Double> means, Map<Key, Double> own) {
    List<SiteRow.SiteKey> sites =
        List.copyOf(new TreeSet<>(means.keySet().stream().map(Key::site).toList()));
    boolean shared = error.shared() > 0;
    List<String> offsets =
        shared
            ? List.copyOf(new TreeSet<>(means.keySet().stream().map(this::offset).toList()))
            : List.of();
    Map<SiteRow.SiteKey, Integer> siteIndex = new TreeMap<>();
    sites.forEach(site -> siteIndex.put(site, siteIndex.size()));
    List<SiteReadings.Row> rows = new ArrayList<>();
    means.forEach(
        (key, value) ->
            rows.add(
                new SiteReadings.Row(
                    siteIndex.get(key.site),
                    value,
                    own.get(key),
                    shared
                        ? List.of(
                            new SiteReadings.Loading(offsets.indexOf(offset(key)), error.shared()))
                        : List.of(),
                    true,
                    property,
                    key.laboratory)));
    return new SiteReadings(
        property,
        unit,
        scale,
        sites.stream()
            .map(k -> new SiteReadings.Site(k.id(), k.field(), k.place(), k.date()))
            .toList(),
        rows,
        offsets,
        SiteHandOver.identity(offsets.size()),
        findings);
  }

  private String offset(Key key) {
    String name = key.laboratory.isEmpty() ? "laboratory not named" : key.laboratory;
    return "laboratory: " + name + ", " + property;
  }
}
