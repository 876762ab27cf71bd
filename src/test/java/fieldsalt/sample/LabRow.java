package fieldsalt.sample;

import fieldsalt.geo.PlaceM;
import fieldsalt.quantity.DepthRange;
import fieldsalt.quantity.Method;
import java.util.Map;
import java.util.TreeMap;

/**
 * One row of an invented laboratory sheet.
 *
 * @param place local metres
 * @param ec as it is printed in the cell
 * @param other further cells by the header of the samples format
 */
public record LabRow(
    String id,
    String field,
    PlaceM place,
    DepthRange depth,
    Method method,
    String ec,
    String unit,
    String texture,
    String lab,
    Map<String, String> other) {

  public LabRow {
    other = new TreeMap<>(other);
  }

  LabRow withEc(String cell) {
    return new LabRow(id, field, place, depth, method, cell, unit, texture, lab, other);
  }

  LabRow withUnit(String cell) {
    return new LabRow(id, field, place, depth, method, ec, cell, texture, lab, other);
  }

  LabRow at(PlaceM where) {
    return new LabRow(id, field, where, depth, method, ec, unit, texture, lab, other);
  }

  public double dSPerM() {
    return Double.parseDouble(ec) / (unit.equals("uS/cm") ? 1000 : 1);
  }
}
