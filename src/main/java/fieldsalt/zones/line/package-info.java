/**
 * Room of stage 5, zones: lines between classes and widths of polygons. May import: zones.lattice.
 */
package fieldsalt.zones.line;
