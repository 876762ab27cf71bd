/**
 * Room of leaf geo: well-known text of coordinate systems. Takes: a text of version 1 or 2. Gives:
 * its horizontal system as nodes of version 1. May import: nothing.
 */
package fieldsalt.geo.text;
