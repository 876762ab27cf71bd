/**
 * Leaf: longitude and latitude to metres and back, areas; the only package that decodes or
 * transforms a coordinate reference system. Takes: degrees, codes and texts of systems, rasters.
 * Gives: the ranch's projection ({@code Projections}), the way of a file's coordinates to WGS 84
 * ({@code SourceSystem}), a raster asked by places ({@code RasterFile}). A ranch in degrees or UTM
 * of WGS 84 loads no class of the coordinate library. Rooms: text and datum, then projection, then
 * registry, then raster; none imports this package. May import: finding.
 */
package fieldsalt.geo;
