package fieldsalt.zones.line;

import java.util.OptionalDouble;
import org.locationtech.jts.geom.Coordinate;

/**
 * A straight line over a square grid of places, one place for each step along its longer axis.
 *
 * @param from on the grid
 * @param to on the grid
 * @param perUnit grid steps to one unit of the coordinates
 */
public record Straight(Coordinate from, Coordinate to, double perUnit) {
  private boolean byX() {
    return Math.abs(to.x - from.x) >= Math.abs(to.y - from.y);
  }

  /** The whole step nearest to a share of the way, 0 to 1. */
  public double step(double share) {
    double start = byX() ? from.x : from.y;
    double run = byX() ? to.x - from.x : to.y - from.y;
    return Math.rint((start + share * run) * perUnit);
  }

  public double stepOf(Coordinate place) {
    return Math.rint((byX() ? place.x : place.y) * perUnit);
  }

  private double across(double step) {
    double start = byX() ? from.x : from.y;
    double run = byX() ? to.x - from.x : to.y - from.y;
    double other = byX() ? from.y : from.x;
    double rise = byX() ? to.y - from.y : to.x - from.x;
    return run == 0 ? other : other + rise * (step / perUnit - start) / run;
  }

  private double onGrid(double value) {
    return Math.round(value * perUnit) / perUnit;
  }

  /** How far, in grid steps, the place at a step lies from the line, across it. */
  public double off(double step) {
    double exact = across(step);
    return Math.abs(onGrid(exact) - exact) * perUnit;
  }

  /** The place of the grid nearest to the line at a step. */
  public Coordinate place(double step) {
    double along = step / perUnit;
    double across = onGrid(across(step));
    return byX() ? new Coordinate(along, across) : new Coordinate(across, along);
  }

  /**
   * The step strictly between two steps that lies nearest to the line, the first of those that lie
   * on it.
   *
   * @param most steps to look at
   * @param on how far from the line a place still counts as on it
   * @return empty if the start is on the line, or no step comes nearer to it than the start
   */
  public OptionalDouble nextOn(double start, double end, int most, double on) {
    double least = off(start);
    double best = Double.NaN;
    double direction = Math.signum(end - start);
    double steps = Math.min(most, Math.abs(end - start) - 1);
    for (int k = 1; k <= steps && least > on; k++) {
      double off = off(start + k * direction);
      if (off < least) {
        least = off;
        best = start + k * direction;
      }
    }
    return Double.isNaN(best) ? OptionalDouble.empty() : OptionalDouble.of(best);
  }
}
