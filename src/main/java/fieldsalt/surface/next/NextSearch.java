package fieldsalt.surface.next;

import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.area.Informed;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What to measure next: greedily the reading with the largest exact one-step gain (the sum over
 * zones of squared covariance with it over its variance, zones weighted by their hectares), each
 * given those before it. Field by field: what a reading tells of other fields goes through the
 * effects that all share.
 */
public final class NextSearch {
  /** Places of the ranch that may be sampled, and of a field at least. */
  public static final int PLACES = 150;

  private static final int PLACES_OF_FIELD = 12;

  /** A reading that lowers its field's error by less than 1 % is not worth naming. */
  private static final double LEAST = 1 - 0.99 * 0.99;

  /** Elements of all fields' own covariances that are held at once, 8 bytes each. */
  private static final long MOST_HELD = 6_000_000;

  private final Solved solved;
  private final Optional<Informed> informed;
  private final DirectReading reading;
  private final SharedEffects shared;
  private final double[] ofReading;
  private final List<FieldCase> cases = new ArrayList<>();
  private final int most;
  private boolean withoutZones;
  private int places;

  /** An open reading: the field's position and the reading's in it. */
  private record Open(int field, int option) {}

  /**
   * For one model.
   *
   * @param likeliest under whose model the gains are counted
   * @param most places of the ranch that may be sampled, about
   */
  public NextSearch(Predictor likeliest, int most) {
    this.most = most;
    this.solved = likeliest.solved();
    this.informed = likeliest instanceof Informed told ? Optional.of(told) : Optional.empty();
    this.reading = DirectReading.of(solved.data());
    this.shared = SharedEffects.of(solved, reading.newSharedVariance());
    this.ofReading = shared.ofOffsets(reading.loadings());
    ofReading[ofReading.length - 1] = reading.newSharedVariance() > 0 ? 1 : 0;
  }

  /**
   * The best readings, each given those before it.
   *
   * @param areas zones by their points, each in one field; may be empty
   * @param hectares of the zones
   */
  public Proposals best(
      List<FieldBoundary> fields, List<List<Target>> areas, List<Double> hectares, int count) {
    Map<String, List<Integer>> zonesOf = new LinkedHashMap<>();
    for (int z = 0; z < areas.size(); z++) {
      zonesOf.computeIfAbsent(areas.get(z).get(0).field(), f -> new ArrayList<>()).add(z);
    }
    withoutZones = areas.isEmpty();
    double area = fields.stream().mapToDouble(f -> f.shapeM().getArea()).sum();
    fields.stream()
        .sorted(Comparator.comparing(FieldBoundary::name))
        .map(
            f -> {
              List<Integer> own = zonesOf.getOrDefault(f.name(), List.of());
              return new FieldCase(
                  solved,
                  shared,
                  f,
                  own.stream().map(areas::get).toList(),
                  own.stream().mapToDouble(z -> hectares.get(z)).toArray(),
                  informed,
                  reading,
                  (int) Math.max(PLACES_OF_FIELD, Math.round(most * f.shapeM().getArea() / area)));
            })
        .forEach(cases::add);
    boolean keep = cases.stream().mapToLong(f -> f.elements() * f.elements()).sum() <= MOST_HELD;
    List<List<FieldCase.Told>> told = cases.parallelStream().map(f -> f.workOut(keep)).toList();
    told.forEach(field -> field.forEach(t -> shared.observe(t.b(), t.variance())));
    places = cases.stream().mapToInt(FieldCase::places).sum();
    return greedy(count);
  }

  private Proposals greedy(int count) {
    double ranchNow = ranchError();
    double worstNow = worstError();
    double whole = variance();
    List<Proposal> best = new ArrayList<>();
    List<Open> open = new ArrayList<>();
    for (int f = 0; f < cases.size(); f++) {
      for (int o = 0; o < cases.get(f).options().size(); o++) {
        open.add(new Open(f, o));
      }
    }
    while (best.size() < count && !open.isEmpty()) {
      double[][] all = zoneProducts();
      double[] ranch = ranchLoadings();
      Open next = open.get(0);
      double gain = -1;
      for (Open one : open) {
        double own = gain(cases.get(one.field()), one.option(), all, ranch);
        if (own > gain * (1 + 1e-9)) {
          gain = own;
          next = one;
        }
      }
      open.remove(next);
      FieldCase field = cases.get(next.field());
      if (gain < LEAST * (withoutZones ? variance() : variance(field))) {
        break;
      }
      FieldCase.Told told = field.make(next.option(), ofReading);
      shared.observe(told.b(), told.variance());
      FieldCase.Option option = field.options().get(next.option());
      best.add(
          new Proposal(
              option.kind(),
              option.siteId(),
              field.name(),
              option.place(),
              gain,
              gain / whole,
              ranchError(),
              worstError()));
    }
    return new Proposals(ranchNow, worstNow, best);
  }

  /** Weighted sum over all zones of the outer products of their loadings. */
  private double[][] zoneProducts() {
    double[][] sum = new double[shared.size()][shared.size()];
    for (FieldCase field : cases) {
      double[][] loadings = field.gains().zoneLoadings();
      for (int z = 0; z < loadings.length; z++) {
        for (int i = 0; i < sum.length; i++) {
          for (int j = 0; j < sum.length; j++) {
            sum[i][j] += field.weights()[z] * loadings[z][i] * loadings[z][j];
          }
        }
      }
    }
    return sum;
  }

  /**
   * The reduction of the zones' variances by a reading; of the ranch's where there are no zones.
   */
  private double gain(FieldCase field, int option, double[][] zoneProducts, double[] ranch) {
    FieldGains gains = field.gains();
    double[] b = SharedEffects.sum(gains.loadings()[option], ofReading);
    double[] c = shared.times(b);
    double t = gains.own()[option] + field.options().get(option).noise() + FieldBlock.dot(b, c);
    if (withoutZones) {
      double with = gains.spreadWith()[option] / places + FieldBlock.dot(ranch, c);
      return with * with / t;
    }
    double gain = 0;
    for (int i = 0; i < c.length; i++) {
      gain += c[i] * FieldBlock.dot(zoneProducts[i], c);
    }
    for (int z = 0; z < field.weights().length; z++) {
      double own = gains.zoneWith()[option][z];
      double across = FieldBlock.dot(gains.zoneLoadings()[z], c);
      gain += field.weights()[z] * own * (own + 2 * across);
    }
    return gain / t;
  }

  private double[] ranchLoadings() {
    double[] mean = new double[shared.size()];
    for (FieldCase field : cases) {
      for (int e = 0; e < mean.length; e++) {
        mean[e] += field.gains().spreadLoadings()[e] / places;
      }
    }
    return mean;
  }

  /** Standard error of the ranch's mean. */
  private double ranchError() {
    double sum = cases.stream().mapToDouble(f -> f.gains().spreadVariance()).sum();
    return root(sum / places / places + shared.variance(ranchLoadings()));
  }

  /** The largest standard error of a zone's mean; the ranch's where there are no zones. */
  private double worstError() {
    double worst = withoutZones ? ranchError() : 0;
    for (FieldCase field : cases) {
      FieldGains gains = field.gains();
      for (int z = 0; z < field.weights().length; z++) {
        double variance = gains.zoneVariance()[z] + shared.variance(gains.zoneLoadings()[z]);
        worst = Math.max(worst, root(variance));
      }
    }
    return worst;
  }

  /** What gains are parts of: the zones' variances by their weights, or the ranch's. */
  private double variance() {
    return withoutZones
        ? ranchError() * ranchError()
        : cases.stream().mapToDouble(this::variance).sum();
  }

  private double variance(FieldCase field) {
    double sum = 0;
    FieldGains gains = field.gains();
    for (int z = 0; z < field.weights().length; z++) {
      sum +=
          field.weights()[z] * (gains.zoneVariance()[z] + shared.variance(gains.zoneLoadings()[z]));
    }
    return sum;
  }

  private static double root(double variance) {
    return Math.sqrt(Math.max(0, variance));
  }
}
