/**
 * Room of stage 5, zones: one field. Takes: its map and class scheme. Gives: zones with their
 * figures. May import: zones.clean and what that may.
 */
package fieldsalt.zones.field;
