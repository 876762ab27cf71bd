/**
 * Room of stage 5, zones: small and thin pieces join their neighbours. May import: zones.line,
 * zones.lattice.
 */
package fieldsalt.zones.clean;
