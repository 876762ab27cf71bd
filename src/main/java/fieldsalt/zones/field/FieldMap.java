package fieldsalt.zones.field;

import fieldsalt.surface.map.SurfaceMap;

/**
 * The map that holds a field.
 *
 * @param index of the field in the map's list
 */
public record FieldMap(SurfaceMap map, int index) {
  boolean isOfField(int cell) {
    return map.fieldOf()[cell] == index;
  }

  /** Values of the field's cells that have one, on a scale. */
  double[] values(ValueScale scale) {
    double[] values = new double[map.median().length];
    int n = 0;
    for (int i = 0; i < values.length; i++) {
      if (isOfField(i) && Float.isFinite(map.median()[i])) {
        values[n++] = scale.apply(map.median()[i]);
      }
    }
    return java.util.Arrays.copyOf(values, n);
  }
}
