/**
 * Room of leaf geo: systems by EPSG code or text through the coordinate library. Takes: a code, or
 * text mended by geo.text. Gives: a system with its ties to WGS 84. With geo.raster the only room
 * that imports the library. May import: geo.text, geo.datum, geo.projection, finding.
 */
package fieldsalt.geo.registry;
