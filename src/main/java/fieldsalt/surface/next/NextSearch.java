package fieldsalt.surface.next;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.gaussian.Cholesky;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.area.Informed;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.site.FieldLattice;
import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.Points;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What to measure next: greedily the reading with the largest exact one-step gain (the sum over
 * zones of squared covariance with it over its variance), each given those before it. Field by
 * field: what a reading tells of other fields goes through the effects that all share.
 */
public final class NextSearch {
  /** Points that stand for a zone, and places of the ranch that may be sampled. */
  private static final int POINTS_OF_ZONE = 40;

  private static final int PLACES = 150;

  private final Solved solved;
  private final Optional<Informed> informed;
  private final DirectReading reading;
  private final SharedEffects shared;
  private final double[] ofReading;
  private final Map<Integer, FieldBlock> blocks = new TreeMap<>();
  private final Map<Integer, int[]> lattice = new TreeMap<>();
  private final List<int[]> zones = new ArrayList<>();
  private final List<Option> options = new ArrayList<>();
  private final List<Integer> toldFrom = new ArrayList<>();
  private int places;

  /** A reading that could be made: z at an element of a field, seen with {@code noise}. */
  private record Option(
      Proposal.Kind kind,
      String siteId,
      String field,
      PlaceM place,
      int part,
      int element,
      double noise) {}

  /**
   * For one model.
   *
   * @param likeliest under whose model the gains are counted
   */
  public NextSearch(Predictor likeliest) {
    this.solved = likeliest.solved();
    this.informed = likeliest instanceof Informed told ? Optional.of(told) : Optional.empty();
    this.reading = DirectReading.of(solved.data());
    this.shared = SharedEffects.of(solved, reading.newSharedVariance());
    this.ofReading = shared.ofOffsets(reading.loadings());
    ofReading[ofReading.length - 1] = reading.newSharedVariance() > 0 ? 1 : 0;
  }

  /** The best readings, each given those before it. */
  public Proposals best(List<FieldBoundary> fields, List<List<Target>> areas, int count) {
    areas.stream().filter(z -> !z.isEmpty()).forEach(this::addZone);
    addPlaces(fields);
    addSites(fields);
    Map<FieldBlock, List<Integer>> told = addTold();
    blocks.values().forEach(block -> block.close(shared.size()));
    told.forEach(this::observeTold);
    return greedy(count);
  }

  private FieldBlock block(int part) {
    return blocks.computeIfAbsent(part, p -> new FieldBlock(solved, p));
  }

  /** A zone lies in one field. */
  private void addZone(List<Target> zone) {
    int step = (zone.size() + POINTS_OF_ZONE - 1) / POINTS_OF_ZONE;
    List<PlaceM> some = new ArrayList<>();
    for (int i = 0; i < zone.size(); i += step) {
      some.add(zone.get(i).place());
    }
    int part = solved.data().indexOf(zone.get(0).field());
    FieldBlock block = block(part);
    block.addZone(block.addPlaces(Points.of(solved.data(), part, some)), some.size());
    zones.add(new int[] {part, block.zoneCount() - 1});
  }

  /** Places spread over the ranch by area: its mean, and where new sites may be. */
  private void addPlaces(List<FieldBoundary> fields) {
    double area = fields.stream().mapToDouble(f -> f.shapeM().getArea()).sum();
    double noise = reading.ownVariance() + solved.model().microScale();
    for (FieldBoundary field : fields) {
      int part = solved.data().indexOf(field.name());
      int wanted = (int) Math.max(4, Math.round(PLACES * field.shapeM().getArea() / area));
      List<PlaceM> spread = FieldLattice.of(field, wanted);
      int from = block(part).addPlaces(Points.of(solved.data(), part, spread));
      lattice.put(part, new int[] {from, spread.size()});
      places += spread.size();
      for (int i = 0; i < spread.size(); i++) {
        options.add(
            new Option(
                Proposal.Kind.NEW_SITE, "", field.name(), spread.get(i), part, from + i, noise));
      }
    }
  }

  private void addSites(List<FieldBoundary> fields) {
    for (FieldBoundary field : fields) {
      int part = solved.data().indexOf(field.name());
      FieldBlock block = block(part);
      int from = block.addSites();
      FieldRows rows = block.rows();
      for (int s = 0; s < rows.sites().size(); s++) {
        if (convertedOnly(rows, s)) {
          SiteReadings.Site site = rows.sites().get(s);
          options.add(
              new Option(
                  Proposal.Kind.PASTE_RERUN,
                  site.id(),
                  field.name(),
                  site.place(),
                  part,
                  from + s,
                  reading.ownVariance()));
        }
      }
    }
  }

  /** Whether a site has converted readings and no direct one. */
  private static boolean convertedOnly(FieldRows rows, int site) {
    return Arrays.stream(rows.rowsOf(site))
        .mapToObj(rows.rows()::get)
        .allMatch(r -> !r.paste() && !r.loadings().isEmpty());
  }

  /** Places of composites; which of them lie in which field. */
  private Map<FieldBlock, List<Integer>> addTold() {
    Map<FieldBlock, List<Integer>> byField = new LinkedHashMap<>();
    List<Informed.Given> told = informed.map(Informed::given).orElse(List.of());
    for (int t = 0; t < told.size(); t++) {
      FieldBlock block = block(told.get(t).places().part());
      toldFrom.add(block.addPlaces(told.get(t).places()));
      byField.computeIfAbsent(block, b -> new ArrayList<>()).add(t);
    }
    return byField;
  }

  /**
   * What composites of a field already told; their values play no part in what is still unknown.
   * Their noise may be correlated: it is made independent first.
   */
  private void observeTold(FieldBlock block, List<Integer> told) {
    int n = told.size();
    double[][] noise = new double[n][n];
    double[][] weights = new double[n][];
    double[][] offsets = new double[n][];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        noise[i][j] = informed.orElseThrow().noise(told.get(i), told.get(j));
      }
      Informed.Given area = informed.orElseThrow().given().get(told.get(i));
      weights[i] = new double[block.elements()];
      int from = toldFrom.get(told.get(i));
      System.arraycopy(area.weights(), 0, weights[i], from, area.weights().length);
      offsets[i] = shared.ofOffsets(area.loadings());
    }
    Cholesky factor = Cholesky.factor(noise);
    factor.forwardRows(weights);
    factor.forwardRows(offsets);
    for (int i = 0; i < n; i++) {
      double[] b = sum(block.loadings(weights[i]), offsets[i]);
      shared.observe(b, block.variance(weights[i]) + 1);
      block.observe(weights[i], 1, b);
    }
  }

  private static double[] sum(double[] a, double[] b) {
    double[] sum = a.clone();
    for (int i = 0; i < b.length; i++) {
      sum[i] += b[i];
    }
    return sum;
  }

  private Proposals greedy(int count) {
    double[] now = errors();
    List<Proposal> best = new ArrayList<>();
    List<Option> open = new ArrayList<>(options);
    while (best.size() < count && !open.isEmpty()) {
      double[][] all = zoneProducts();
      Option next = open.get(0);
      double gain = -1;
      for (Option option : open) {
        double own = gain(option, all);
        if (own > gain * (1 + 1e-9)) {
          gain = own;
          next = option;
        }
      }
      open.remove(next);
      FieldBlock block = blocks.get(next.part());
      double[] b = sum(block.loadings(next.element()), ofReading);
      shared.observe(b, block.own(next.element()) + next.noise());
      block.observe(next.element(), next.noise(), b);
      double[] errors = errors();
      best.add(
          new Proposal(
              next.kind(),
              next.siteId(),
              next.field(),
              next.place(),
              gain,
              errors[zones.size()],
              worst(errors)));
    }
    return new Proposals(now[zones.size()], worst(now), best);
  }

  /** Sum over all zones of the outer products of their loadings. */
  private double[][] zoneProducts() {
    double[][] sum = new double[shared.size()][shared.size()];
    for (int[] zone : zones) {
      double[] b = blocks.get(zone[0]).zoneLoadings(zone[1]);
      for (int i = 0; i < b.length; i++) {
        for (int j = 0; j < b.length; j++) {
          sum[i][j] += b[i] * b[j];
        }
      }
    }
    return sum;
  }

  /**
   * The reduction of the zones' variances by a reading; of the ranch's where there are no zones.
   */
  private double gain(Option option, double[][] zoneProducts) {
    FieldBlock block = blocks.get(option.part());
    double[] b = sum(block.loadings(option.element()), ofReading);
    double[] c = shared.times(b);
    double t = block.own(option.element()) + option.noise() + FieldBlock.dot(b, c);
    if (zones.isEmpty()) {
      double with = ranchWith(option.part(), option.element(), c);
      return with * with / t;
    }
    double gain = 0;
    for (int i = 0; i < c.length; i++) {
      gain += c[i] * FieldBlock.dot(zoneProducts[i], c);
    }
    for (int z = 0; z < block.zoneCount(); z++) {
      double own = block.zoneWith(z, option.element());
      double across = FieldBlock.dot(block.zoneLoadings(z), c);
      gain += own * (own + 2 * across);
    }
    return gain / t;
  }

  /** Covariance of the ranch's mean with a reading. */
  private double ranchWith(int part, int element, double[] c) {
    int[] own = lattice.get(part);
    double sum = own == null ? 0 : blocks.get(part).sumWith(own[0], own[1], element);
    return sum / places + FieldBlock.dot(ranchLoadings(), c);
  }

  private double[] ranchLoadings() {
    double[] mean = new double[shared.size()];
    lattice.forEach(
        (part, range) -> {
          for (int i = 0; i < range[1]; i++) {
            double[] b = blocks.get(part).loadings(range[0] + i);
            for (int e = 0; e < mean.length; e++) {
              mean[e] += b[e] / places;
            }
          }
        });
    return mean;
  }

  /** Standard errors of the zones' means, then of the ranch's. */
  private double[] errors() {
    double[] errors = new double[zones.size() + 1];
    for (int z = 0; z < zones.size(); z++) {
      FieldBlock block = blocks.get(zones.get(z)[0]);
      int own = zones.get(z)[1];
      errors[z] = root(block.zoneVariance(own) + shared.variance(block.zoneLoadings(own)));
    }
    double sum = 0;
    for (Map.Entry<Integer, int[]> e : lattice.entrySet()) {
      sum += blocks.get(e.getKey()).sumVariance(e.getValue()[0], e.getValue()[1]);
    }
    errors[zones.size()] = root(sum / places / places + shared.variance(ranchLoadings()));
    return errors;
  }

  private static double root(double variance) {
    return Math.sqrt(Math.max(0, variance));
  }

  /** The largest of the zones' errors; the ranch's where there are no zones. */
  private static double worst(double[] errors) {
    int zones = errors.length - 1;
    return zones == 0 ? errors[0] : Arrays.stream(errors, 0, zones).max().orElseThrow();
  }
}
