package fieldsalt.surface.next;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.gaussian.Cholesky;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.area.Informed;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.site.FieldLattice;
import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.Points;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** One field in the search for what to measure next: its zones, and readings that could be made. */
final class FieldCase {
  /** Points that stand for a zone. */
  private static final int POINTS_OF_ZONE = 40;

  private final Solved solved;
  private final SharedEffects shared;
  private final FieldBoundary field;
  private final int part;
  private final List<List<Target>> zones;
  private final double[] weights;
  private final List<PlaceM> spread;
  private final List<Option> options = new ArrayList<>();
  private final List<Integer> composites = new ArrayList<>();
  private final Optional<Informed> informed;
  private final List<Observed> made = new ArrayList<>();
  private FieldGains gains;

  /** Sites whose stored sample can be read again, rising. */
  private int[] again;

  /** Kept where memory allows it: then it is not made anew after each reading. */
  private FieldBlock kept;

  /** A reading that could be made: z at an element of the field, seen with {@code noise}. */
  record Option(Proposal.Kind kind, String siteId, PlaceM place, int element, double noise) {}

  /** A reading taken as made; {@code b} its loadings on the shared effects. */
  private record Observed(int element, double noise, double[] b) {}

  /** What the shared effects learn: loadings of a reading and its variance given them. */
  record Told(double[] b, double variance) {}

  /**
   * @param zones of the field, each by its points
   * @param weights one a zone
   * @param places how many places of the field may be sampled
   */
  FieldCase(
      Solved solved,
      SharedEffects shared,
      FieldBoundary field,
      List<List<Target>> zones,
      double[] weights,
      Optional<Informed> informed,
      DirectReading reading,
      int places) {
    this.solved = solved;
    this.shared = shared;
    this.field = field;
    this.part = solved.data().indexOf(field.name());
    this.zones = zones;
    this.weights = weights;
    this.informed = informed;
    this.spread = FieldLattice.of(field, places);
    List<Informed.Given> given = informed.map(Informed::given).orElse(List.of());
    for (int t = 0; t < given.size(); t++) {
      if (given.get(t).places().part() == part) {
        composites.add(t);
      }
    }
    addOptions(reading);
  }

  /** New places come first among the block's elements after the zones, then the sites. */
  private void addOptions(DirectReading reading) {
    double noise = reading.ownVariance() + solved.model().microScale();
    int from = spreadFrom();
    for (int i = 0; i < spread.size(); i++) {
      options.add(new Option(Proposal.Kind.NEW_SITE, "", spread.get(i), from + i, noise));
    }
    FieldRows rows = solved.data().parts().get(part);
    again = IntStream.range(0, rows.sites().size()).filter(s -> convertedOnly(rows, s)).toArray();
    for (int i = 0; i < again.length; i++) {
      SiteReadings.Site site = rows.sites().get(again[i]);
      options.add(
          new Option(
              Proposal.Kind.PASTE_RERUN,
              site.id(),
              site.place(),
              from + spread.size() + i,
              reading.ownVariance()));
    }
  }

  /** Whether a site has converted readings and no direct one. */
  private static boolean convertedOnly(FieldRows rows, int site) {
    return Arrays.stream(rows.rowsOf(site))
        .mapToObj(rows.rows()::get)
        .allMatch(r -> !r.paste() && !r.loadings().isEmpty());
  }

  private int spreadFrom() {
    return zones.stream().mapToInt(zone -> some(zone).size()).sum();
  }

  private static List<PlaceM> some(List<Target> zone) {
    int step = (zone.size() + POINTS_OF_ZONE - 1) / POINTS_OF_ZONE;
    List<PlaceM> some = new ArrayList<>();
    for (int i = 0; i < zone.size(); i += step) {
      some.add(zone.get(i).place());
    }
    return some;
  }

  /** The block with all readings taken as made; what the composites tell goes to {@code told}. */
  private FieldBlock block(List<Told> told) {
    FieldBlock block = new FieldBlock(solved, part);
    for (List<Target> zone : zones) {
      List<PlaceM> some = some(zone);
      block.addZone(block.addPlaces(Points.of(solved.data(), part, some)), some.size());
    }
    block.addPlaces(Points.of(solved.data(), part, spread));
    block.addSites(again);
    List<Integer> from = new ArrayList<>();
    for (int t : composites) {
      from.add(block.addPlaces(informed.orElseThrow().given().get(t).places()));
    }
    block.close(shared.size());
    observeComposites(block, from, told);
    for (Observed o : made) {
      block.observe(o.element(), o.noise(), o.b());
    }
    return block;
  }

  /**
   * What composites of the field already told; their values play no part in what is still unknown.
   * Their noise may be correlated: it is made independent first.
   */
  private void observeComposites(FieldBlock block, List<Integer> from, List<Told> told) {
    int n = composites.size();
    double[][] noise = new double[n][n];
    double[][] sums = new double[n][];
    double[][] offsets = new double[n][];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        noise[i][j] = informed.orElseThrow().noise(composites.get(i), composites.get(j));
      }
      Informed.Given area = informed.orElseThrow().given().get(composites.get(i));
      sums[i] = new double[block.elements()];
      System.arraycopy(area.weights(), 0, sums[i], from.get(i), area.weights().length);
      offsets[i] = shared.ofOffsets(area.loadings());
    }
    Cholesky factor = Cholesky.factor(noise);
    factor.forwardRows(sums);
    factor.forwardRows(offsets);
    for (int i = 0; i < n; i++) {
      double[] b = SharedEffects.sum(block.loadings(sums[i]), offsets[i]);
      told.add(new Told(b, block.variance(sums[i]) + 1));
      block.observe(sums[i], 1, b);
    }
  }

  /**
   * Works the gains out.
   *
   * @param keep whether the block may be held
   * @return what composites tell the shared effects
   */
  List<Told> workOut(boolean keep) {
    List<Told> told = new ArrayList<>();
    FieldBlock block = block(told);
    kept = keep ? block : null;
    workOut(block);
    return told;
  }

  private void workOut(FieldBlock block) {
    int[] elements = options.stream().mapToInt(Option::element).toArray();
    gains = FieldGains.of(block, elements, spreadFrom(), spread.size());
  }

  /** Elements of the block, composites left out. */
  long elements() {
    return spreadFrom() + spread.size() + (long) again.length;
  }

  /** Takes a reading as made, and gives what the shared effects learn from it. */
  Told make(int option, double[] ofReading) {
    Option made = options.get(option);
    double[] b = SharedEffects.sum(gains.loadings()[option], ofReading);
    double variance = gains.own()[option] + made.noise();
    if (kept == null) {
      this.made.add(new Observed(made.element(), made.noise(), b));
      workOut(block(new ArrayList<>()));
    } else {
      kept.observe(made.element(), made.noise(), b);
      workOut(kept);
    }
    return new Told(b, variance);
  }

  String name() {
    return field.name();
  }

  List<Option> options() {
    return options;
  }

  FieldGains gains() {
    return gains;
  }

  double[] weights() {
    return weights;
  }

  int places() {
    return spread.size();
  }
}
