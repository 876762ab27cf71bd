/**
 * Room of stage 5, zones: zones that the user gives. Takes: polygons in metres. Gives: pieces of
 * fields that share their lines. May import: zones.field and what that may.
 */
package fieldsalt.zones.given;
