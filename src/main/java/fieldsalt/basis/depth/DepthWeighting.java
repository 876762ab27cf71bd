package fieldsalt.basis.depth;

import fieldsalt.basis.layer.Conversion;
import fieldsalt.basis.layer.LayerReading;
import fieldsalt.basis.setting.BasisSettings;
import fieldsalt.basis.soil.Rows;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Brings the rows of one field to means over its root zone. What is mapped is the part of the root
 * zone that any site of the field sampled. A site that sampled less is completed by the profile
 * that another method saw at the same site; else by the ranch's mean ln ratio of the whole to that
 * part, from at least five full profiles, with its variance; else its error grows by 0.3 times the
 * missing share, in quadrature.
 */
public final class DepthWeighting {
  private static final int ENOUGH_PROFILES = 5;

  private final String field;
  private final RootZone rootZone;
  private final List<SiteRow> rows;
  private final List<SiteRow> composites;
  private final List<SiteRow> ranch;
  private final Map<SiteRow.SiteKey, List<SiteRow>> bySite;
  private final Segments segments;
  private final BitSet mapped = new BitSet();
  private final double unsampledError;
  private final Map<BitSet, Optional<Ratio>> ratios = new HashMap<>();
  private final List<Finding> findings = new ArrayList<>();

  /** Mean and variance of ln(mean over all that is mapped / mean over a part of it). */
  private record Ratio(double mean, double variance) {}

  /** A site's row with its mean over depth. */
  public record Weighted(SiteRow row, DepthMean mean) {}

  /**
   * @param rows of this field's sites, which decide what is mapped
   * @param composites of this field
   * @param ranch rows of all fields, for the ratio of layers
   */
  public DepthWeighting(
      String field,
      RootZone rootZone,
      List<SiteRow> rows,
      List<SiteRow> composites,
      List<SiteRow> ranch,
      BasisSettings settings) {
    this.field = field;
    this.rootZone = rootZone;
    this.rows = rows;
    this.composites = composites;
    this.ranch = ranch;
    List<SiteRow> all = new ArrayList<>(rows);
    all.addAll(composites);
    this.bySite = all.stream().collect(Collectors.groupingBy(SiteRow::site));
    this.segments = new Segments(all, rootZone);
    this.unsampledError = settings.conversionErrors().unsampled();
    rows.forEach(row -> mapped.or(segments.covered(row)));
  }

  public List<Finding> findings() {
    return List.copyOf(findings);
  }

  /** Every row of a site that reaches into the root zone. */
  public List<Weighted> weighted() {
    List<Weighted> all = weighted(rows);
    reportShare();
    return all;
  }

  /** Every composite that reaches into it. */
  public List<Weighted> weightedComposites() {
    return mapped.isEmpty() ? List.of() : weighted(composites.stream().filter(this::fits).toList());
  }

  /** A mixture of a layer that the sites know in part only says nothing of that part. */
  private boolean fits(SiteRow composite) {
    for (BitSet layer : segments.cover(composite)) {
      BitSet beyond = (BitSet) layer.clone();
      beyond.andNot(mapped);
      if (!beyond.isEmpty()) {
        findings.add(
            new Finding(
                Code.COMPOSITE_DEPTH,
                place(composite),
                "a composite of layers deeper than the sites' "
                    + Rows.number(segments.bottomCm(mapped))
                    + " cm, or between them",
                "it takes no part in the map; sample one depth everywhere"));
        return false;
      }
    }
    return true;
  }

  private List<Weighted> weighted(List<SiteRow> some) {
    List<Weighted> all = new ArrayList<>();
    List<String> incomplete = new ArrayList<>();
    for (SiteRow row : some) {
      checkLayers(row);
      BitSet sampled = segments.covered(row);
      if (sampled.isEmpty()) {
        findings.add(
            new Finding(
                Code.BELOW_ROOT_ZONE,
                place(row),
                "every layer lies below the root zone of "
                    + Rows.number(rootZone.depthCm())
                    + " cm",
                "left out of the map"));
      } else if (sampled.equals(mapped)) {
        all.add(new Weighted(row, DepthMean.over(row, segments, mapped)));
      } else {
        all.add(new Weighted(row, completed(row, sampled, incomplete)));
      }
    }
    reportIncomplete(incomplete);
    return all;
  }

  private DepthMean completed(SiteRow row, BitSet sampled, List<String> incomplete) {
    DepthMean part = DepthMean.over(row, segments, sampled);
    Optional<SiteRow> companion = companion(row, sampled);
    if (companion.isPresent()) {
      return byCompanion(part, companion.get(), sampled);
    }
    double missing = 1 - segments.weight(sampled) / segments.weight(mapped);
    incomplete.add(row.site().id());
    Optional<Ratio> ratio = ratios.computeIfAbsent((BitSet) sampled.clone(), this::ratio);
    return ratio.isPresent()
        ? part.plus(ratio.get().mean, ratio.get().variance, Map.of())
        : part.plus(0, Conversion.square(unsampledError * missing), Map.of());
  }

  /** Another row of the same site that tells this part from the whole. */
  private Optional<SiteRow> companion(SiteRow row, BitSet sampled) {
    return bySite.get(row.site()).stream().filter(other -> tells(other, sampled)).findFirst();
  }

  private boolean tells(SiteRow row, BitSet sampled) {
    BitSet covered = segments.covered(row);
    covered.and(mapped);
    if (!covered.equals(mapped)) {
      return false;
    }
    for (BitSet layer : segments.cover(row)) {
      BitSet in = (BitSet) layer.clone();
      in.and(sampled);
      if (!in.isEmpty() && !in.equals(layer)) {
        return false;
      }
    }
    return true;
  }

  private DepthMean byCompanion(DepthMean part, SiteRow companion, BitSet sampled) {
    DepthMean whole = DepthMean.over(companion, segments, mapped);
    DepthMean same = DepthMean.over(companion, segments, sampled);
    double[] difference = new double[whole.byLayer().length];
    for (int k = 0; k < difference.length; k++) {
      difference[k] = whole.byLayer()[k] - same.byLayer()[k];
    }
    DepthMean step =
        DepthMean.combine(companion.layers(), difference, whole.value() - same.value());
    return part.plus(step.value(), step.ownVariance(), step.loadings());
  }

  private Optional<Ratio> ratio(BitSet sampled) {
    Set<SiteRow.SiteKey> seen = new HashSet<>();
    List<Double> logs = new ArrayList<>();
    for (SiteRow row : ranch) {
      if (!seen.contains(row.site()) && tells(row, sampled)) {
        double whole = DepthMean.over(row, segments, mapped).value();
        double part = DepthMean.over(row, segments, sampled).value();
        seen.add(row.site());
        logs.add(whole - part);
      }
    }
    if (logs.size() < ENOUGH_PROFILES) {
      return Optional.empty();
    }
    double mean = logs.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    double squares = logs.stream().mapToDouble(v -> Conversion.square(v - mean)).sum();
    double variance = squares / (logs.size() - 1) * (1 + 1.0 / logs.size());
    return Optional.of(new Ratio(mean, variance));
  }

  private void checkLayers(SiteRow row) {
    for (int k = 1; k < row.layers().size(); k++) {
      LayerReading above = row.layers().get(k - 1);
      LayerReading here = row.layers().get(k);
      double gap = here.sample().depth().topCm() - above.sample().depth().bottomCm();
      if (here.sample().depth().equals(above.sample().depth())) {
        layerFinding(Code.REPEATED_LAYER, above, here, "their mean is used");
      } else if (gap <= -Segments.TOLERANCE_CM) {
        layerFinding(Code.OVERLAPPING_LAYERS, above, here, "the common part counts half for each");
      } else if (gap >= Segments.TOLERANCE_CM) {
        layerFinding(Code.DEPTH_GAP, above, here, "the gap is not counted as sampled");
      }
    }
  }

  private void layerFinding(Code code, LayerReading above, LayerReading here, String done) {
    findings.add(
        Rows.finding(
            code,
            here.sample(),
            Rows.depth(above.sample().depth())
                + " and "
                + Rows.depth(here.sample().depth())
                + " by "
                + here.method().label(),
            done));
  }

  private void reportIncomplete(List<String> incomplete) {
    if (incomplete.isEmpty()) {
      return;
    }
    boolean predicted = ratios.values().stream().allMatch(Optional::isPresent);
    findings.add(
        new Finding(
            Code.UNEQUAL_DEPTH,
            Place.field(field),
            "rows that do not reach "
                + Rows.number(segments.bottomCm(mapped))
                + " cm: "
                + incomplete.size()
                + ", at "
                + String.join(", ", new TreeSet<>(incomplete)),
            predicted
                ? "the missing layers were predicted from the ranch's full profiles, with the error"
                    + " of that"
                : "their errors were widened by 0.3 times the missing share; sample all sites to one"
                    + " depth"));
  }

  private void reportShare() {
    if (mapped.isEmpty() || segments.weight(mapped) >= 0.5 - 1e-9) {
      return;
    }
    findings.add(
        new Finding(
            Code.TOPSOIL_ONLY,
            Place.field(field),
            String.format(
                Locale.ROOT,
                "%.0f %% of the root zone of %.0f cm was sampled",
                100 * segments.weight(mapped),
                rootZone.depthCm()),
            "yields are an indication and the leaching plan a draft; sample deeper"));
  }

  private static Place place(SiteRow row) {
    return Rows.place(row.layers().get(0).sample());
  }

  /** What the field's readings stand for; empty if none reaches into the root zone. */
  public Optional<FieldDepth> depth() {
    if (mapped.isEmpty()) {
      return Optional.empty();
    }
    List<SiteRow> full = rows.stream().filter(row -> segments.covered(row).equals(mapped)).toList();
    int fullSites = (int) full.stream().map(SiteRow::site).distinct().count();
    int sites = (int) rows.stream().map(SiteRow::site).distinct().count();
    return Optional.of(
        new FieldDepth(
            field,
            rootZone,
            segments.topCm(mapped),
            segments.bottomCm(mapped),
            segments.weight(mapped),
            fullSites,
            sites - fullSites,
            new Profiles(rootZone).shape(rows)));
  }
}
