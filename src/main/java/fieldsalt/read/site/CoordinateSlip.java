package fieldsalt.read.site;

import fieldsalt.read.field.FieldFinder;
import fieldsalt.read.sample.Placing;
import fieldsalt.read.sample.Spot;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** Slips that explain why no site lies in a field. */
@SuppressWarnings("ImmutableEnumChecker") // the functions hold no state
public enum CoordinateSlip {
  SWAPPED(
      s -> Spot.lonLat(s.b(), s.a()),
      "Latitude and longitude look swapped, here or in the boundaries: correct the"
          + " column names or the file that is wrong."),
  WEST_LOST(
      s -> Spot.lonLat(-s.a(), s.b()),
      "The longitudes look as if their minus sign (west) was lost, here or in the boundaries."),
  SOUTH_LOST(
      s -> Spot.lonLat(s.a(), -s.b()),
      "The latitudes look as if their minus sign (south) was lost, here or in the boundaries.");

  private static final int FARTHEST_LATITUDE = 84;

  private final UnaryOperator<Spot> corrected;
  private final String remedy;

  CoordinateSlip(UnaryOperator<Spot> corrected, String remedy) {
    this.corrected = corrected;
    this.remedy = remedy;
  }

  /** What to do about it. */
  public String remedy() {
    return remedy;
  }

  /** The first slip without which a site would lie in a field; empty if none explains it. */
  public static Optional<CoordinateSlip> of(List<Spot> spots, Placing placing, FieldFinder fields) {
    return Arrays.stream(values())
        .filter(slip -> spots.stream().anyMatch(s -> slip.explains(s, placing, fields)))
        .findFirst();
  }

  private boolean explains(Spot spot, Placing placing, FieldFinder fields) {
    return Optional.of(spot)
        .filter(Spot::degrees)
        .map(corrected)
        .filter(s -> Math.abs(s.a()) <= 180 && Math.abs(s.b()) <= FARTHEST_LATITUDE)
        .flatMap(placing::place)
        .flatMap(fields::find)
        .isPresent();
  }
}
