package fieldsalt.surface.next;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.gaussian.GaussianState;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.area.Informed;
import fieldsalt.surface.area.TargetGroups;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.site.FieldLattice;
import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.Points;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What to measure next: greedily the reading with the largest exact one-step gain (the sum over
 * zones of squared covariance with it over its variance), each given those before it.
 */
public final class NextSearch {
  /** Points that stand for a zone, and places of the ranch that may be sampled. */
  private static final int POINTS_OF_ZONE = 40;

  private static final int PLACES = 150;

  private final Solved solved;
  private final Optional<Informed> informed;
  private final NextState builder;
  private final DirectReading reading;
  private final List<Option> options = new ArrayList<>();
  private int offsetsFrom;
  private int ownOffset;

  /** A reading that could be made: z at {@code element}, seen with {@code noise}. */
  private record Option(
      Proposal.Kind kind, String siteId, String field, PlaceM place, int element, double noise) {}

  /**
   * @param likeliest under whose model the gains are counted
   */
  public NextSearch(Predictor likeliest) {
    this.solved = likeliest.solved();
    this.informed = likeliest instanceof Informed told ? Optional.of(told) : Optional.empty();
    this.builder = new NextState(solved);
    this.reading = DirectReading.of(solved.data());
  }

  public Proposals best(List<FieldBoundary> fields, List<List<Target>> zones, int count) {
    zones.stream().filter(z -> !z.isEmpty()).forEach(this::addZone);
    addRanch(fields);
    addSites(fields);
    offsetsFrom = builder.addOffsets();
    ownOffset = builder.addUnknown();
    List<Informed.Told> told = informed.map(Informed::told).orElse(List.of());
    int[] from = told.stream().mapToInt(t -> builder.addPlaces(t.places())).toArray();
    GaussianState state = builder.state(reading.newSharedVariance());
    if (informed.isPresent()) {
      double[][] h = new double[from.length][];
      Arrays.setAll(h, t -> combination(told.get(t), from[t]));
      state = state.observeAll(h, informed.get().noise(), new double[from.length]);
    }
    return greedy(state, builder.contrasts(), count);
  }

  /** What a composite already told; its value plays no part in what is still unknown. */
  private double[] combination(Informed.Told area, int from) {
    double[] h = new double[builder.elements()];
    System.arraycopy(area.weights(), 0, h, from, area.weights().length);
    System.arraycopy(area.loadings(), 0, h, offsetsFrom, area.loadings().length);
    return h;
  }

  private void addZone(List<Target> zone) {
    int step = (zone.size() + POINTS_OF_ZONE - 1) / POINTS_OF_ZONE;
    List<Target> some = new ArrayList<>();
    for (int i = 0; i < zone.size(); i += step) {
      some.add(zone.get(i));
    }
    int[] members = new int[some.size()];
    int at = 0;
    for (Points points : TargetGroups.of(solved.data(), some).points()) {
      int from = builder.addPlaces(points);
      for (int i = 0; i < points.size(); i++) {
        members[at++] = from + i;
      }
    }
    builder.addMean(members);
  }

  /** Places spread over the ranch by area: its mean, and where new sites may be. */
  private void addRanch(List<FieldBoundary> fields) {
    double area = fields.stream().mapToDouble(f -> f.shapeM().getArea()).sum();
    List<Integer> members = new ArrayList<>();
    for (FieldBoundary field : fields) {
      int part = solved.data().indexOf(field.name());
      int wanted = (int) Math.max(4, Math.round(PLACES * field.shapeM().getArea() / area));
      List<PlaceM> places = FieldLattice.of(field, wanted);
      int from = builder.addPlaces(Points.of(solved.data(), part, places));
      double noise = reading.ownVariance() + solved.model().microScale();
      for (int i = 0; i < places.size(); i++) {
        members.add(from + i);
        options.add(
            new Option(Proposal.Kind.NEW_SITE, "", field.name(), places.get(i), from + i, noise));
      }
    }
    builder.addMean(members.stream().mapToInt(i -> i).toArray());
  }

  private void addSites(List<FieldBoundary> fields) {
    for (FieldBoundary field : fields) {
      int part = solved.data().indexOf(field.name());
      int from = builder.addSites(part);
      FieldRows rows = solved.data().parts().get(part);
      for (int s = 0; s < rows.sites().size(); s++) {
        if (convertedOnly(rows, s)) {
          SiteReadings.Site site = rows.sites().get(s);
          options.add(
              new Option(
                  Proposal.Kind.PASTE_RERUN,
                  site.id(),
                  field.name(),
                  site.place(),
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

  private Proposals greedy(GaussianState before, double[][] contrasts, int count) {
    int zones = contrasts.length - 1;
    double[] weights = new double[contrasts.length];
    Arrays.fill(weights, 0, zones, 1);
    weights[zones] = zones == 0 ? 1 : 0;
    List<Proposal> best = new ArrayList<>();
    List<Option> open = new ArrayList<>(options);
    GaussianState state = before;
    while (best.size() < count && !open.isEmpty()) {
      Option next = open.get(0);
      double gain = -1;
      for (Option option : open) {
        double own = state.gain(combination(option), option.noise(), contrasts, weights);
        if (own > gain * (1 + 1e-9)) {
          gain = own;
          next = option;
        }
      }
      open.remove(next);
      state = state.observe(combination(next), next.noise(), 0);
      double[] errors = errors(state, contrasts);
      best.add(
          new Proposal(
              next.kind(),
              next.siteId(),
              next.field(),
              next.place(),
              gain,
              errors[zones],
              worst(errors)));
    }
    double[] now = errors(before, contrasts);
    return new Proposals(now[zones], worst(now), best);
  }

  private double[] combination(Option option) {
    double[] h = new double[builder.elements()];
    h[option.element()] = 1;
    System.arraycopy(reading.loadings(), 0, h, offsetsFrom, reading.loadings().length);
    h[ownOffset] = reading.newSharedVariance() > 0 ? 1 : 0;
    return h;
  }

  private static double[] errors(GaussianState state, double[][] contrasts) {
    return Arrays.stream(contrasts)
        .mapToDouble(c -> Math.sqrt(Math.max(0, state.variance(c))))
        .toArray();
  }

  /** The largest of the zones' errors; the ranch's where there are no zones. */
  private static double worst(double[] errors) {
    int zones = errors.length - 1;
    return zones == 0 ? errors[0] : Arrays.stream(errors, 0, zones).max().orElseThrow();
  }
}
