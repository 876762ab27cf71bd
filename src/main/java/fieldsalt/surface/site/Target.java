package fieldsalt.surface.site;

import fieldsalt.geo.PlaceM;

/** A place to predict, in a field: fields are independent of one another given the offsets. */
public record Target(String field, PlaceM place) {}
