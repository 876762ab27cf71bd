package fieldsalt.basis.depth;

import fieldsalt.basis.layer.LayerReading;
import fieldsalt.basis.soil.Rows;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.quantity.DepthRange;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;

/**
 * Layers of one profile set against each other before they are averaged: 6, 63 and 6 dS/m by depth
 * is a slip, or a very thin layer of its own. A layer between two others is expected between them;
 * one at an end as far from its neighbour as the ranch's profiles usually are, where five or more
 * tell; and any layer as the same site's profile by another method says. Where what was read is
 * likelier to be wrong than right, as for sites (own rule, no published source: see the methods),
 * it counts half as read and half as expected, with the variance of that mixture.
 */
public final class ProfileDoubts {
  private static final double LOG_PRIOR_ODDS = Math.log(0.05 / 0.95);

  /** Standard deviation of a slip, ln; as for sites. */
  private static final double SLIP = 1.5;

  /** How far a layer usually is from between its neighbours, ln (judgement). */
  private static final double USUAL_SPREAD = 0.4;

  private static final double LEAST_SPREAD = 0.25;

  /** How well another method tells the shape of a profile, ln (judgement). */
  private static final double OF_ANOTHER_METHOD = 0.3;

  private static final int ENOUGH_PROFILES = 5;

  private final List<SiteRow> ranch;
  private final Map<SiteRow.SiteKey, List<SiteRow>> bySite;
  private final Map<String, double[]> usual;
  private final List<Finding> findings = new ArrayList<>();

  private ProfileDoubts(List<SiteRow> ranch) {
    this.ranch = ranch;
    this.bySite = ranch.stream().collect(Collectors.groupingBy(SiteRow::site));
    Map<String, List<Double>> steps = new HashMap<>();
    for (SiteRow row : ranch) {
      for (int k = 0; isProfile(row) && k < row.layers().size(); k++) {
        Expected at = fromNeighbours(row, k, Set.of());
        steps.computeIfAbsent(at.kind, s -> new ArrayList<>()).add(z(row, k) - at.value);
      }
    }
    this.usual =
        steps.entrySet().stream()
            .filter(e -> e.getValue().size() >= ENOUGH_PROFILES)
            .collect(Collectors.toMap(Map.Entry::getKey, e -> middleAndSpread(e.getValue())));
  }

  /**
   * The profiles, doubtful layers as mixtures.
   *
   * @param findings takes what was found
   * @param confirmed rows (by number, or file and number) and ids that a person has confirmed
   */
  public static List<SiteRow> settled(
      List<SiteRow> ranch, Set<String> confirmed, List<Finding> findings) {
    ProfileDoubts doubts = new ProfileDoubts(ranch);
    List<SiteRow> rows =
        doubts.ranch.stream()
            .map(row -> isProfile(row) ? doubts.settled(row, confirmed) : row)
            .toList();
    findings.addAll(doubts.findings);
    return rows;
  }

  /** What a layer is expected to be, ln ECe; {@code kind} names places of the same kind. */
  private record Expected(String kind, double value, double ofNeighbours) {}

  private record Told(double value, double variance) {
    Told and(Told other) {
      double here = 1 / variance;
      double there = 1 / other.variance;
      return new Told((value * here + other.value * there) / (here + there), 1 / (here + there));
    }
  }

  /** Three layers or more, none of which overlap. */
  private static boolean isProfile(SiteRow row) {
    for (int k = 1; k < row.layers().size(); k++) {
      if (depth(row, k).topCm() < depth(row, k - 1).bottomCm() - Segments.TOLERANCE_CM) {
        return false;
      }
    }
    return row.layers().size() >= 3;
  }

  private static DepthRange depth(SiteRow row, int k) {
    return row.layers().get(k).sample().depth();
  }

  private static double z(SiteRow row, int k) {
    return row.layers().get(k).lnEce();
  }

  private static double middle(SiteRow row, int k) {
    return (depth(row, k).topCm() + depth(row, k).bottomCm()) / 2;
  }

  private SiteRow settled(SiteRow row, Set<String> confirmed) {
    Map<Integer, Told> doubtful = new HashMap<>();
    int most = Math.max(1, row.layers().size() / 3);
    boolean found = true;
    while (found && doubtful.size() < most) {
      found = false;
      int worst = 0;
      double highest = 0;
      for (int k = 0; k < row.layers().size(); k++) {
        double odds =
            doubtful.containsKey(k) || isConfirmed(row.layers().get(k), confirmed)
                ? -1
                : logOdds(row, k, doubtful.keySet());
        if (odds > highest) {
          highest = odds;
          worst = k;
          found = true;
        }
      }
      if (found) {
        doubtful.put(worst, told(row, worst, doubtful.keySet()).orElseThrow());
      }
    }
    return doubtful.isEmpty() ? row : mixed(row, doubtful);
  }

  private static boolean isConfirmed(LayerReading layer, Set<String> confirmed) {
    return confirmed.contains(layer.sample().id())
        || confirmed.contains(layer.sample().source().toString())
        || confirmed.contains(String.valueOf(layer.sample().source().row()));
  }

  private double logOdds(SiteRow row, int k, Set<Integer> doubtful) {
    return told(row, k, doubtful)
        .map(
            others -> {
              double variance = others.variance + row.layers().get(k).ownVariance();
              double ratio = SLIP * SLIP / variance;
              double error = z(row, k) - others.value;
              return LOG_PRIOR_ODDS
                  - 0.5 * Math.log1p(ratio)
                  + 0.5 * error * error / variance * ratio / (1 + ratio);
            })
        .orElse(-1.0);
  }

  /** What the other layers and other methods say of a layer; empty where they say nothing. */
  private Optional<Told> told(SiteRow row, int k, Set<Integer> doubtful) {
    Expected between = fromNeighbours(row, k, doubtful);
    double[] known = usual.get(between.kind);
    boolean inside = between.kind.startsWith("between");
    Optional<Told> told =
        known == null && !inside
            ? Optional.empty()
            : Optional.of(
                known == null
                    ? new Told(between.value, USUAL_SPREAD * USUAL_SPREAD + between.ofNeighbours)
                    : new Told(
                        between.value + known[0], known[1] * known[1] + between.ofNeighbours));
    for (SiteRow other : bySite.get(row.site())) {
      Optional<Told> same = other.equals(row) ? Optional.empty() : byOther(row, other, k, doubtful);
      told = same.isPresent() ? told.map(t -> t.and(same.get())).or(() -> same) : told;
    }
    return told;
  }

  /** The layer as another method's profile of the same layers says. */
  private static Optional<Told> byOther(SiteRow row, SiteRow other, int k, Set<Integer> doubtful) {
    int n = row.layers().size();
    if (other.layers().size() != n) {
      return Optional.empty();
    }
    double sum = 0;
    int count = 0;
    double own = other.layers().get(k).ownVariance();
    for (int j = 0; j < n; j++) {
      if (!depth(row, j).equals(depth(other, j))) {
        return Optional.empty();
      }
      if (j != k && !doubtful.contains(j)) {
        sum += z(row, j) - z(other, j);
        count++;
      }
    }
    return count == 0
        ? Optional.empty()
        : Optional.of(
            new Told(z(other, k) + sum / count, OF_ANOTHER_METHOD * OF_ANOTHER_METHOD * 2 + own));
  }

  /** Between the next layers above and below that are not in doubt; at an end the one that is. */
  private static Expected fromNeighbours(SiteRow row, int k, Set<Integer> doubtful) {
    int above = k - 1;
    while (above >= 0 && doubtful.contains(above)) {
      above--;
    }
    int below = k + 1;
    while (below < row.layers().size() && doubtful.contains(below)) {
      below++;
    }
    boolean hasBelow = below < row.layers().size();
    if (above >= 0 && hasBelow) {
      double share =
          (middle(row, k) - middle(row, above)) / (middle(row, below) - middle(row, above));
      double own =
          (1 - share) * (1 - share) * row.layers().get(above).ownVariance()
              + share * share * row.layers().get(below).ownVariance();
      return new Expected(
          kind("between", row, above, k, below),
          (1 - share) * z(row, above) + share * z(row, below),
          own);
    }
    int next = hasBelow ? below : above;
    return new Expected(
        kind("beside", row, k, next), z(row, next), row.layers().get(next).ownVariance());
  }

  private static String kind(String word, SiteRow row, int... layers) {
    return word
        + Arrays.stream(layers)
            .mapToObj(k -> " " + Rows.depth(depth(row, k)))
            .collect(Collectors.joining());
  }

  /** Median, and 1.4826 times the median distance from it. */
  private static double[] middleAndSpread(List<Double> values) {
    double middle = median(values.stream().mapToDouble(v -> v));
    double spread = 1.4826 * median(values.stream().mapToDouble(v -> Math.abs(v - middle)));
    return new double[] {middle, Math.max(LEAST_SPREAD, spread)};
  }

  private static double median(DoubleStream values) {
    double[] sorted = values.sorted().toArray();
    return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
  }

  /** Doubtful layers half as read, half as expected. */
  private SiteRow mixed(SiteRow row, Map<Integer, Told> doubtful) {
    List<LayerReading> layers = new ArrayList<>(row.layers());
    for (Map.Entry<Integer, Told> e : new TreeMap<>(doubtful).entrySet()) {
      LayerReading read = layers.get(e.getKey());
      Told told = e.getValue();
      double half = (read.lnEce() - told.value) / 2;
      double variance = (read.ownVariance() + told.variance) / 2 + half * half;
      layers.set(e.getKey(), read.mixed(read.lnEce() - half, variance));
      findings.add(finding(read, told));
    }
    return new SiteRow(row.site(), row.method(), row.laboratory(), layers);
  }

  private static Finding finding(LayerReading read, Told told) {
    double error = 1.645 * Math.sqrt(told.variance);
    return Rows.finding(
        Code.DOUBTFUL_LAYER,
        read.sample(),
        String.format(
            Locale.ROOT,
            "%s by %s: ECe %s dS/m; the rest of this profile suggests %s (90 %%: %s to %s)",
            Rows.depth(read.sample().depth()),
            read.method().label(),
            Rows.number(read.ece()),
            Rows.number(Math.exp(told.value)),
            Rows.number(Math.exp(told.value - error)),
            Rows.number(Math.exp(told.value + error))),
        "either the reading is wrong or the layer is salty by itself: it counts half; run the stored"
            + " sample again; once you know, end the doubt in the job by the row: confirm: {ROW:"
            + " UNIT} or leave-out: [ROW]");
  }
}
