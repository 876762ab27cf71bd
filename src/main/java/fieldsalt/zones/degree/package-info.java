/** Room of stage 5, zones: zones in degrees, rounded together. May import: zones.line. */
package fieldsalt.zones.degree;
