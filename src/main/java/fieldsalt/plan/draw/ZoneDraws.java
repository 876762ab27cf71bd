package fieldsalt.plan.draw;

import java.util.List;

/**
 * Futures of one soil property in every zone, moving together as their errors do.
 *
 * @param values one row a zone; null where nothing is known
 * @param known where each zone's values come from
 */
public record ZoneDraws(double[][] values, List<Known> known) {
  public ZoneDraws {
    known = List.copyOf(known);
  }

  public boolean has(int zone) {
    return values[zone] != null;
  }
}
