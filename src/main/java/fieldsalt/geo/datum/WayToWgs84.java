package fieldsalt.geo.datum;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * One or two shifts that lead from a datum to WGS 84, and how good they are together.
 *
 * @param ellipsoids of the datums on the way, WGS 84's last; one more than there are shifts
 */
public record WayToWgs84(List<DatumShift> shifts, List<Ellipsoid> ellipsoids) {
  private static final double EXACT_DEGREES = 1e-12;
  private static final int ROUNDS = 10;

  /** Nothing to do. */
  static final WayToWgs84 NONE = new WayToWgs84(List.of(), List.of(Ellipsoid.WGS84));

  public WayToWgs84 {
    shifts = List.copyOf(shifts);
    ellipsoids = List.copyOf(ellipsoids);
  }

  /** The stated accuracies added up, metres; empty if one is not stated. */
  OptionalDouble accuracyM() {
    return shifts.stream().allMatch(s -> s.accuracyM().isPresent())
        ? OptionalDouble.of(shifts.stream().mapToDouble(s -> s.accuracyM().getAsDouble()).sum())
        : OptionalDouble.empty();
  }

  /** The registry's names of the shifts. */
  public String name() {
    return shifts.stream().map(DatumShift::name).collect(Collectors.joining(", then "));
  }

  /** Whether all of it was made for the place. */
  boolean covers(double longitude, double latitude, double marginDegrees) {
    return shifts.stream().allMatch(s -> s.area().covers(longitude, latitude, marginDegrees));
  }

  boolean atSea() {
    return shifts.stream().anyMatch(DatumShift::atSea);
  }

  /** Whether it leaves every place where it is. */
  boolean isZero() {
    return shifts.stream().allMatch(s -> Arrays.stream(s.numbers()).allMatch(v -> v == 0));
  }

  /** The smallest of the areas: of two ways that are as good the more local one goes first. */
  double squareDegrees() {
    return shifts.stream().mapToDouble(s -> s.area().squareDegrees()).min().orElse(0);
  }

  int operation() {
    return shifts.get(0).operation();
  }

  /** {longitude, latitude} on WGS 84. */
  public double[] toWgs84(double longitude, double latitude) {
    double[] at = {longitude, latitude};
    for (int i = 0; i < shifts.size(); i++) {
      at = shifts.get(i).move(at[0], at[1], ellipsoids.get(i), ellipsoids.get(i + 1));
    }
    return at;
  }

  /** {longitude, latitude} on the datum of a place on WGS 84. */
  public double[] fromWgs84(double longitude, double latitude) {
    double[] at = {longitude, latitude};
    for (int i = 0; i < ROUNDS; i++) {
      double[] there = toWgs84(at[0], at[1]);
      double east = Math.IEEEremainder(longitude - there[0], 360);
      double north = latitude - there[1];
      at = new double[] {at[0] + east, at[1] + north};
      if (Math.abs(east) + Math.abs(north) < EXACT_DEGREES) {
        break;
      }
    }
    return at;
  }
}
