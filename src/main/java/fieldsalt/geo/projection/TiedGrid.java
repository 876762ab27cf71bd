package fieldsalt.geo.projection;

import fieldsalt.geo.datum.WaysToWgs84;

/**
 * What is known of a system of coordinates.
 *
 * @param name for people
 * @param way to degrees on its datum
 * @param ties from its datum to WGS 84
 */
public record TiedGrid(String name, GridWay way, WaysToWgs84 ties) {}
