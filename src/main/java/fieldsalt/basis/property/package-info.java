/**
 * Room of stage 2, basis: properties other than salinity: SAR, ESP, CEC, bulk density, any numeric
 * column. Takes: samples. Gives: SiteReadings. May import: basis.site and what that may.
 */
package fieldsalt.basis.property;
