package fieldsalt.basis.pair;

import fieldsalt.basis.layer.Conversion;
import fieldsalt.basis.layer.LayerKey;
import fieldsalt.basis.layer.LayerReading;
import fieldsalt.basis.layer.LayerReadings;
import fieldsalt.basis.layer.Offsets;
import fieldsalt.basis.relation.MethodKey;
import fieldsalt.basis.setting.BasisSettings;
import fieldsalt.basis.soil.Rows;
import fieldsalt.basis.soil.SoilGroup;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.finding.SameText;
import fieldsalt.gaussian.Normal;
import fieldsalt.quantity.DepthRange;
import fieldsalt.quantity.TextureGroup;
import fieldsalt.read.sample.Sample;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** Makes the converted table: rows, factors before and after pairs, means. */
public final class ReadingsTableMaker {
  private static final double Z90 = Normal.quantile(0.95);

  private final BasisSettings settings;
  private final LayerReadings readings;
  private final Map<LayerKey, List<LayerReading>> layers;
  private final Set<LayerReading> paired;
  private final Offsets offsets;
  private final FactorPosterior posterior;
  private final List<Finding> findings = new ArrayList<>();

  private record GroupKey(String laboratory, MethodKey method, TextureGroup texture)
      implements Comparable<GroupKey> {
    private static final Comparator<GroupKey> ORDER =
        Comparator.comparing(GroupKey::laboratory)
            .thenComparing(GroupKey::method)
            .thenComparing(GroupKey::texture);

    static GroupKey of(LayerReading r) {
      return new GroupKey(r.sample().laboratory(), r.method(), SoilGroup.of(r.sample().soil()));
    }

    @Override
    public int compareTo(GroupKey other) {
      return ORDER.compare(this, other);
    }
  }

  public ReadingsTableMaker(LayerReadings readings, BasisSettings settings) {
    this.settings = settings;
    this.readings = readings;
    this.layers = LayerKey.group(readings.measured());
    this.offsets = new Offsets(readings.measured());
    this.posterior = new FactorPosterior(layers, settings.options().dropPairs(), offsets);
    this.paired = paired(layers, settings.options().dropPairs());
    findings.addAll(SameText.joined(readings.findings()));
  }

  /** Readings of layers that were also read directly, but of sites whose pairs are dropped. */
  private static Set<LayerReading> paired(
      Map<LayerKey, List<LayerReading>> layers, Set<String> dropped) {
    Set<LayerReading> paired = Collections.newSetFromMap(new IdentityHashMap<>());
    layers.forEach(
        (key, rows) -> {
          if (rows.size() > 1
              && !dropped.contains(key.id())
              && rows.stream().anyMatch(r -> r.method().isBasis())) {
            paired.addAll(rows);
          }
        });
    return paired;
  }

  public ConvertedReadings converted() {
    List<ConvertedReadings.Pair> pairs = pairs();
    Map<GroupKey, List<LayerReading>> groups = groups();
    List<LnSlope> slopes = slopes();
    PairCoverage.check(layers, findings);
    return new ConvertedReadings(
        rows(),
        groups.entrySet().stream().map(e -> group(e.getKey(), e.getValue())).toList(),
        pairs,
        slopes,
        means(),
        findings);
  }

  private List<ConvertedReadings.Row> rows() {
    List<ConvertedReadings.Row> rows = new ArrayList<>();
    readings.measured().forEach(r -> rows.add(row(r)));
    rows.sort(
        Comparator.comparing((ConvertedReadings.Row r) -> r.sample().source().file())
            .thenComparingInt(r -> r.sample().source().row())
            .thenComparing(ConvertedReadings.Row::method));
    return rows;
  }

  private ConvertedReadings.Row row(LayerReading r) {
    boolean basis = r.method().isBasis();
    double shift = basis ? 0 : -posterior.mean(r.shared());
    double shared = basis ? prior(r) : posterior.variance(r.shared());
    double half = Z90 * Math.sqrt(shared + r.ownVariance());
    double ln = r.lnEce() + shift;
    return new ConvertedReadings.Row(
        r.sample(),
        r.method().label(),
        Math.exp(ln),
        Math.exp(ln - half),
        Math.exp(ln + half),
        r.factor() * Math.exp(shift),
        r.relation().name(),
        r.relation().citation(),
        r.relation().confidence(),
        r.findings());
  }

  private static double prior(LayerReading r) {
    return r.shared().stream().mapToDouble(t -> t.sd() * t.sd()).sum();
  }

  private Map<GroupKey, List<LayerReading>> groups() {
    Map<GroupKey, List<LayerReading>> groups = new TreeMap<>();
    for (LayerReading r : readings.measured()) {
      if (!r.method().isBasis()) {
        groups.computeIfAbsent(GroupKey.of(r), k -> new ArrayList<>()).add(r);
      }
    }
    return groups;
  }

  private ConvertedReadings.Group group(GroupKey key, List<LayerReading> rows) {
    List<LayerReading.Term> mean = meanTerms(rows);
    double prior =
        Math.exp(rows.stream().mapToDouble(r -> Math.log(r.factor())).average().orElseThrow());
    double own = rows.stream().mapToDouble(LayerReading::ownVariance).average().orElseThrow();
    List<LayerReading> pastes = pastes();
    double pasteOwn = Conversion.square(settings.laboratoryErrors().paste().own());
    return new ConvertedReadings.Group(
        key.laboratory,
        key.method.label(),
        key.texture,
        prior,
        Math.sqrt(mean.stream().mapToDouble(t -> t.sd() * t.sd()).sum()),
        prior * Math.exp(-posterior.mean(mean)),
        Math.sqrt(posterior.variance(mean)),
        Math.sqrt(own),
        rows.size(),
        (int) rows.stream().filter(this::isPaired).count(),
        posterior.sdAfterOneMore(mean, nextPaste(pastes), own + pasteOwn));
  }

  /** The group's shared error as a row of average size has it. */
  private static List<LayerReading.Term> meanTerms(List<LayerReading> rows) {
    Map<String, Double> sum = new TreeMap<>();
    rows.forEach(r -> r.shared().forEach(t -> sum.merge(t.offset(), t.sd(), Double::sum)));
    return sum.entrySet().stream()
        .map(e -> new LayerReading.Term(e.getKey(), e.getValue() / rows.size()))
        .toList();
  }

  private List<LayerReading> pastes() {
    return readings.measured().stream().filter(r -> r.method().isBasis()).toList();
  }

  /** The shared error of the next paste reading: of the laboratory with most of them so far. */
  private List<LayerReading.Term> nextPaste(List<LayerReading> pastes) {
    Map<String, Integer> count = new TreeMap<>();
    pastes.forEach(r -> count.merge(r.sample().laboratory(), 1, Integer::sum));
    return pastes.stream()
        .max(
            Comparator.comparing((LayerReading r) -> count.get(r.sample().laboratory()))
                .thenComparing(r -> r.sample().laboratory()))
        .map(LayerReading::shared)
        .orElse(
            List.of(
                new LayerReading.Term(
                    "another laboratory", settings.laboratoryErrors().paste().shared())));
  }

  private boolean isPaired(LayerReading reading) {
    return paired.contains(reading);
  }

  private List<ConvertedReadings.Pair> pairs() {
    List<ConvertedReadings.Pair> pairs = new ArrayList<>();
    for (FactorPosterior.Fit fit : posterior.fits()) {
      Sample sample = fit.reading().sample();
      ConvertedReadings.Pair pair =
          new ConvertedReadings.Pair(
              sample.id(),
              sample.depth(),
              sample.laboratory(),
              fit.reading().method().label(),
              SoilGroup.of(sample.soil()),
              sample.ec().orElseThrow().dSPerM(),
              fit.other().ece(),
              fit.sigmas());
      pairs.add(pair);
      if (pair.isOutlying()) {
        findings.add(
            Rows.finding(
                Code.OUTLYING_PAIR,
                sample,
                String.format(
                    java.util.Locale.ROOT,
                    "%s reading and its pair differ by %.1f standard deviations from the other"
                        + " pairs",
                    pair.method(),
                    Math.abs(pair.sigmas())),
                "kept; check for a swapped bag, or name the site in drop-pairs"));
      }
    }
    return pairs;
  }

  private List<LnSlope> slopes() {
    Map<GroupKey, List<LayerReading>> byMethod = new TreeMap<>();
    for (LayerReading r : readings.measured()) {
      if (!r.method().isBasis() && isPaired(r)) {
        GroupKey key = new GroupKey(r.sample().laboratory(), r.method(), TextureGroup.UNKNOWN);
        byMethod.computeIfAbsent(key, k -> new ArrayList<>()).add(r);
      }
    }
    List<LnSlope> slopes = new ArrayList<>();
    byMethod.forEach(
        (key, rows) -> {
          if (rows.size() >= LnSlope.LEAST_PAIRS) {
            slope(key, rows).ifPresent(slopes::add);
          }
        });
    return slopes;
  }

  private Optional<LnSlope> slope(GroupKey key, List<LayerReading> rows) {
    LnSlope.Sums sums = new LnSlope.Sums();
    for (LayerReading r : rows) {
      LayerReading paste =
          layers.get(LayerKey.of(r.sample())).stream()
              .filter(other -> other.method().isBasis())
              .findFirst()
              .orElseThrow();
      sums.add(SoilGroup.of(r.sample().soil()), r, paste);
    }
    Optional<LnSlope> fitted = sums.fit(key.laboratory, key.method.label());
    fitted.filter(LnSlope::isCurved).ifPresent(slope -> findings.add(curved(key, slope)));
    return fitted;
  }

  private static Finding curved(GroupKey key, LnSlope slope) {
    return new Finding(
        Code.LN_LN_SLOPE,
        Place.laboratory(key.laboratory, key.method.label(), Set.of()),
        String.format(
            java.util.Locale.ROOT,
            "slope of ln ECe on ln EC is %.2f (90 %% interval %.2f to %.2f) over %d pairs",
            slope.slope(),
            slope.low(),
            slope.high(),
            slope.pairs()),
        "the multiplier is kept; it is too low at one end and too high at the other: read more"
            + " pairs there");
  }

  private List<ConvertedReadings.Mean> means() {
    Map<String, Map<DepthRange, List<List<LayerReading>>>> byField = new TreeMap<>();
    Comparator<DepthRange> downwards =
        Comparator.comparingDouble(DepthRange::topCm).thenComparingDouble(DepthRange::bottomCm);
    layers.forEach(
        (key, rows) ->
            byField
                .computeIfAbsent(key.field(), f -> new TreeMap<>(downwards))
                .computeIfAbsent(key.depth(), d -> new ArrayList<>())
                .add(rows));
    List<ConvertedReadings.Mean> means = new ArrayList<>();
    byField.forEach(
        (field, depths) -> depths.forEach((depth, rows) -> means.add(mean(field, depth, rows))));
    return means;
  }

  /** Arithmetic mean; each site's own error is taken out of its expectation. */
  private ConvertedReadings.Mean mean(
      String field, DepthRange depth, List<List<LayerReading>> sites) {
    double sum = 0;
    double own = 0;
    double[] loadings = new double[offsets.count()];
    for (List<LayerReading> site : sites) {
      LayerMean layer = LayerMean.of(site, offsets);
      double ece =
          Math.exp(layer.lnEce() - posterior.meanOf(layer.loadings()) - layer.variance() / 2);
      sum += ece;
      own += ece * ece * layer.variance();
      for (int i = 0; i < loadings.length; i++) {
        loadings[i] += ece * layer.loadings()[i];
      }
    }
    for (int i = 0; i < loadings.length; i++) {
      loadings[i] /= sum;
    }
    double sd = Math.sqrt(own / (sum * sum) + posterior.varianceOf(loadings));
    double mean = sum / sites.size();
    return new ConvertedReadings.Mean(
        field,
        depth,
        sites.size(),
        mean,
        sd,
        mean * Math.exp(-Z90 * sd),
        mean * Math.exp(Z90 * sd));
  }
}
