/**
 * Room of leaf geo: ellipsoids, datums and the published shifts between them. Takes: a datum's code
 * or name and a place in degrees. Gives: the way to WGS 84 there, with its accuracy in metres. May
 * import: nothing.
 */
package fieldsalt.geo.datum;
