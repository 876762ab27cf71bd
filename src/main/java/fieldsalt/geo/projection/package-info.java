/**
 * Room of leaf geo: map projections computed here. Takes: degrees or metres, texts of systems.
 * Gives: UTM of WGS 84 and its texts, Krovak's grid, geometries moved vertex by vertex. May import:
 * geo.text, geo.datum.
 */
package fieldsalt.geo.projection;
