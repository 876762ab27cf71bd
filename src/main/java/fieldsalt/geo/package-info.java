/**
 * Leaf: longitude and latitude to metres and back, areas; the only package that decodes or
 * transforms a coordinate reference system. May import: finding.
 */
package fieldsalt.geo;
