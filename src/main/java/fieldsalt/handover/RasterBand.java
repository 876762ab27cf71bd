package fieldsalt.handover;

import fieldsalt.surface.Grid;

/**
 * One band to be written.
 *
 * @param values row by row from the north-west, NaN where there is none
 * @param description what the number is, for people
 * @param unit of the number, empty if it has none
 */
record RasterBand(Grid grid, float[] values, String description, String unit) {
  RasterBand {
    if (values.length != grid.cells()) {
      throw new IllegalArgumentException(
          "a band needs a value a cell, was " + values.length + " for " + grid.cells());
    }
  }
}
