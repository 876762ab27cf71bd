package fieldsalt.read.site;

import fieldsalt.geo.PlaceM;

/** One reading of an apparent-conductivity survey, in mS/m, greater than 0. */
public record SurveyReading(PlaceM place, double ecaMsPerM) {}
