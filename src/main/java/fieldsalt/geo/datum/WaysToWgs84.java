package fieldsalt.geo.datum;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * All published ways from a datum to WGS 84, and the choice among them by place: made for that
 * place, on land rather than at sea, in one step rather than two, the best stated accuracy, the
 * smaller area, a shift of zero, the later code.
 */
public final class WaysToWgs84 {
  private static final int WGS84 = 4326;

  /** What a datum that is called near may be off by, metres: the drift of plates since 1988. */
  private static final double NEAR_M = 2;

  /** A shift is good a little beyond the box of the region it was made for. */
  private static final double MARGIN_DEGREES = 1;

  private static final Comparator<WayToWgs84> BEST_FIRST =
      Comparator.comparing(WayToWgs84::atSea)
          .thenComparing(way -> way.shifts().size())
          .thenComparing(way -> way.accuracyM().orElse(Double.MAX_VALUE))
          .thenComparing(WayToWgs84::squareDegrees)
          .thenComparing(way -> !way.isZero())
          .thenComparing(WayToWgs84::operation, Comparator.reverseOrder());

  private static final class Table {
    static final Map<Integer, List<DatumShift>> FROM = new HashMap<>();

    static {
      for (String[] row : GeoTable.rows("datum-shifts.csv")) {
        DatumShift shift = DatumShift.of(row);
        FROM.computeIfAbsent(shift.from(), code -> new ArrayList<>()).add(shift);
      }
    }

    static List<DatumShift> from(int code) {
      return FROM.getOrDefault(code, List.of());
    }
  }

  private final List<WayToWgs84> bestFirst;

  private WaysToWgs84(List<WayToWgs84> bestFirst) {
    this.bestFirst = bestFirst;
  }

  /** WGS 84 itself. */
  public static WaysToWgs84 same() {
    return new WaysToWgs84(List.of(WayToWgs84.NONE));
  }

  private static WaysToWgs84 near() {
    return only(DatumShift.none(NEAR_M), Ellipsoid.WGS84);
  }

  /**
   * The way by seven numbers that a file gives: metres, arc-seconds of the position vector, ppm.
   *
   * @param ellipsoid of the datum
   */
  public static WaysToWgs84 given(double[] seven, Ellipsoid ellipsoid) {
    return only(DatumShift.given(seven), ellipsoid);
  }

  private static WaysToWgs84 only(DatumShift shift, Ellipsoid ellipsoid) {
    return new WaysToWgs84(
        List.of(new WayToWgs84(List.of(shift), List.of(ellipsoid, Ellipsoid.WGS84))));
  }

  /** The published ways from a datum; none if nothing ties it. */
  public static WaysToWgs84 of(Datum datum) {
    int start = datum.shiftsOf();
    if (start == WGS84) {
      return same();
    }
    if (datum.near() || Datum.ofCode(start).map(Datum::near).orElse(false)) {
      return near();
    }
    List<WayToWgs84> ways = new ArrayList<>();
    for (DatumShift first : Table.from(start)) {
      if (first.to() == WGS84) {
        ways.add(new WayToWgs84(List.of(first), List.of(datum.ellipsoid(), Ellipsoid.WGS84)));
      } else {
        through(datum, first, ways);
      }
    }
    ways.sort(BEST_FIRST);
    return new WaysToWgs84(List.copyOf(ways));
  }

  private static void through(Datum datum, DatumShift first, List<WayToWgs84> ways) {
    Optional<Datum> middle = Datum.ofCode(first.to());
    for (DatumShift second : Table.from(first.to())) {
      if (second.to() == WGS84 && middle.isPresent()) {
        ways.add(
            new WayToWgs84(
                List.of(first, second),
                List.of(datum.ellipsoid(), middle.get().ellipsoid(), Ellipsoid.WGS84)));
      }
    }
  }

  /** Whether nothing was published. */
  public boolean isEmpty() {
    return bestFirst.isEmpty();
  }

  /** The way for a place given on the datum or on WGS 84, degrees. */
  public Optional<WayToWgs84> at(double longitude, double latitude) {
    return covering(longitude, latitude).stream().findFirst();
  }

  private List<WayToWgs84> covering(double longitude, double latitude) {
    List<WayToWgs84> inside = within(longitude, latitude, 0);
    return inside.isEmpty() ? within(longitude, latitude, MARGIN_DEGREES) : inside;
  }

  private List<WayToWgs84> within(double longitude, double latitude, double margin) {
    return bestFirst.stream().filter(way -> way.covers(longitude, latitude, margin)).toList();
  }

  /**
   * How good the way for a place is, metres; empty if nobody states it for there. Regions are known
   * as boxes only, and boxes of neighbours overlap: where another way for the place lies further
   * off than the accuracies of both explain, one of the two is not meant for here, and that
   * distance counts.
   */
  public OptionalDouble accuracyM(double longitude, double latitude) {
    List<WayToWgs84> ways = within(longitude, latitude, 0);
    if (ways.isEmpty() || ways.get(0).accuracyM().isEmpty()) {
      return OptionalDouble.empty();
    }
    WayToWgs84 best = ways.get(0);
    double stated = best.accuracyM().getAsDouble();
    double[] here = best.toWgs84(longitude, latitude);
    double worst = stated;
    for (WayToWgs84 other : ways) {
      double[] there = other.toWgs84(longitude, latitude);
      double apartM = apartM(here, there);
      boolean rivals = other.accuracyM().isPresent() && other.atSea() == best.atSea();
      if (rivals && apartM > stated + other.accuracyM().getAsDouble()) {
        worst = Math.max(worst, apartM);
      }
    }
    return OptionalDouble.of(worst);
  }

  private static double apartM(double[] a, double[] b) {
    double[] p = Ellipsoid.WGS84.fromCentre(a[0], a[1]);
    double[] q = Ellipsoid.WGS84.fromCentre(b[0], b[1]);
    return Math.hypot(Math.hypot(p[0] - q[0], p[1] - q[1]), p[2] - q[2]);
  }
}
