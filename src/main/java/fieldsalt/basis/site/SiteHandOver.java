package fieldsalt.basis.site;

import fieldsalt.basis.depth.DepthMean;
import fieldsalt.basis.depth.DepthWeighting;
import fieldsalt.basis.depth.FieldDepth;
import fieldsalt.basis.depth.ProfileDoubts;
import fieldsalt.basis.depth.RootZone;
import fieldsalt.basis.depth.SiteRow;
import fieldsalt.basis.layer.Campaigns;
import fieldsalt.basis.layer.LayerKey;
import fieldsalt.basis.layer.LayerReading;
import fieldsalt.basis.layer.LayerReadings;
import fieldsalt.basis.setting.BasisSettings;
import fieldsalt.finding.Finding;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Makes SiteReadings: convert, keep the newest campaign, average over depth, name the offsets. */
public final class SiteHandOver {
  private final BasisSettings settings;
  private final List<Finding> findings = new ArrayList<>();
  private final List<LayerReading> readings;
  private final List<LayerReading> composites;

  /**
   * @param converted every row of the ranch
   */
  public SiteHandOver(LayerReadings converted, BasisSettings settings) {
    this.settings = settings;
    Campaigns campaigns = new Campaigns(settings.options());
    List<LayerReading> pairs = withoutDropped(converted.measured(), settings.options().dropPairs());
    List<LayerReading> newest = campaigns.newest(pairs, LayerReading::sample);
    this.readings = newest.stream().filter(r -> r.sample().place().isPresent()).toList();
    this.composites = newest.stream().filter(Composites::isOne).toList();
    findings.addAll(campaigns.findings());
    findings.addAll(Composites.findings(pairs));
  }

  /** Of a pair that the user dropped only the paste is left. */
  private static List<LayerReading> withoutDropped(
      List<LayerReading> readings, Set<String> dropped) {
    if (dropped.isEmpty()) {
      return readings;
    }
    List<LayerReading> kept = new ArrayList<>();
    LayerKey.group(readings)
        .forEach(
            (layer, rows) -> {
              boolean paste = rows.stream().anyMatch(r -> r.method().isBasis());
              boolean alone = paste && dropped.contains(layer.id());
              rows.stream().filter(r -> !alone || r.method().isBasis()).forEach(kept::add);
            });
    return kept;
  }

  /** Means over each field's root zone. */
  public RootZoneReadings rootZone(Function<String, RootZone> rootZone) {
    List<SiteRow> ranch =
        ProfileDoubts.settled(SiteRow.group(readings), settings.options().confirmed(), findings);
    Map<String, List<SiteRow>> byField = new TreeMap<>();
    ranch.forEach(
        row -> byField.computeIfAbsent(row.site().field(), f -> new ArrayList<>()).add(row));
    Map<String, List<SiteRow>> mixtures =
        SiteRow.group(composites).stream()
            .collect(Collectors.groupingBy(row -> row.site().field()));
    mixtures.forEach(
        (field, own) -> {
          if (!byField.containsKey(field)) {
            own.forEach(row -> findings.add(Composites.withoutSites(row.site())));
          }
        });
    List<DepthWeighting.Weighted> rows = new ArrayList<>();
    List<DepthWeighting.Weighted> means = new ArrayList<>();
    List<FieldDepth> depths = new ArrayList<>();
    byField.forEach(
        (field, own) -> {
          DepthWeighting depth =
              new DepthWeighting(
                  field,
                  rootZone.apply(field),
                  own,
                  mixtures.getOrDefault(field, List.of()),
                  ranch,
                  settings);
          rows.addAll(depth.weighted());
          means.addAll(depth.weightedComposites());
          depth.depth().ifPresent(depths::add);
          findings.addAll(depth.findings());
        });
    return new RootZoneReadings(siteReadings(rows, means), depths);
  }

  private SiteReadings siteReadings(
      List<DepthWeighting.Weighted> rows, List<DepthWeighting.Weighted> means) {
    List<SiteRow.SiteKey> keys =
        List.copyOf(new TreeSet<>(rows.stream().map(w -> w.row().site()).toList()));
    List<String> offsets =
        List.copyOf(
            new TreeSet<>(
                Stream.concat(rows.stream(), means.stream())
                    .flatMap(w -> w.mean().loadings().keySet().stream())
                    .toList()));
    Map<SiteRow.SiteKey, Integer> siteIndex = index(keys);
    Map<String, Integer> offsetIndex = index(offsets);
    List<SiteReadings.Row> out =
        rows.stream()
            .sorted(java.util.Comparator.comparing(w -> siteIndex.get(w.row().site())))
            .map(w -> row(w, siteIndex, offsetIndex))
            .toList();
    return new SiteReadings(
        SiteReadings.ECE,
        "dS/m",
        Scale.LOG,
        keys.stream().map(SiteHandOver::site).toList(),
        out,
        offsets,
        identity(offsets.size()),
        means.stream().map(w -> fieldMean(w, offsetIndex)).toList(),
        findings);
  }

  private static <T extends Comparable<T>> Map<T, Integer> index(List<T> sorted) {
    Map<T, Integer> index = new TreeMap<>();
    sorted.forEach(item -> index.put(item, index.size()));
    return index;
  }

  private static SiteReadings.Site site(SiteRow.SiteKey key) {
    return new SiteReadings.Site(key.id(), key.field(), key.place(), key.date());
  }

  private static SiteReadings.Row row(
      DepthWeighting.Weighted weighted,
      Map<SiteRow.SiteKey, Integer> sites,
      Map<String, Integer> offsets) {
    DepthMean mean = weighted.mean();
    SiteRow row = weighted.row();
    return new SiteReadings.Row(
        sites.get(row.site()),
        mean.value(),
        mean.ownVariance(),
        loadings(mean, offsets),
        row.method().isBasis(),
        row.method().label(),
        row.laboratory());
  }

  private static SiteReadings.FieldMean fieldMean(
      DepthWeighting.Weighted weighted, Map<String, Integer> offsets) {
    SiteRow.SiteKey key = weighted.row().site();
    int cores =
        weighted.row().layers().stream()
            .mapToInt(layer -> layer.sample().extras().cores().orElse(Composites.FEWEST_CORES))
            .min()
            .orElse(Composites.FEWEST_CORES);
    return new SiteReadings.FieldMean(
        key.id() + key.date().map(date -> " of " + date).orElse(""),
        key.field(),
        weighted.mean().value(),
        weighted.mean().ownVariance(),
        loadings(weighted.mean(), offsets),
        cores);
  }

  private static List<SiteReadings.Loading> loadings(DepthMean mean, Map<String, Integer> offsets) {
    return mean.loadings().entrySet().stream()
        .map(e -> new SiteReadings.Loading(offsets.get(e.getKey()), e.getValue()))
        .toList();
  }

  public static double[][] identity(int n) {
    double[][] unit = new double[n][n];
    for (int i = 0; i < n; i++) {
      unit[i][i] = 1;
    }
    return unit;
  }
}
