package fieldsalt.handover.raster;

import fieldsalt.surface.site.Grid;

/**
 * What a raster of one band is.
 *
 * @param description what the number is, for people
 * @param unit of the number, empty if it has none
 */
record RasterBand(Grid grid, String description, String unit) {}
