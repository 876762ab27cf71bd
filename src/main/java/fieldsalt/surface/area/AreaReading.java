package fieldsalt.surface.area;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.surface.site.Points;

/**
 * A reading of a mixture of cores from all over a field.
 *
 * @param places spread evenly over the field
 * @param loadings of the standardised shared errors
 */
record AreaReading(SiteReadings.FieldMean reading, Points places, double[] loadings) {}
