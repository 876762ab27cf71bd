package fieldsalt.zones.line;

import org.locationtech.jts.geom.Coordinate;

/**
 * A line with what lies on either side, looking along it.
 *
 * @param left number of a region, or {@link #OUT} or {@link #ANY}
 * @param right number of a region, or {@link #OUT} or {@link #ANY}
 */
public record LabelledLine(Coordinate[] points, int left, int right) {
  /** Outside the field. */
  public static final int OUT = -1;

  /** Inside the field, no matter what region. */
  public static final int ANY = -2;
}
