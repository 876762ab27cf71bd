/**
 * Room of leaf geo: rasters of the user. Takes: a GeoTIFF. Gives: its first band and its system.
 * May import: geo.registry and what that may.
 */
package fieldsalt.geo.raster;
