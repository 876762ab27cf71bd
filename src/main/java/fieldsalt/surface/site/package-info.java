/**
 * Room of stage 3, surface: rows, sites, places and drifts as numbers, field by field. Takes:
 * SiteReadings, boundaries, surveys. Gives: Observations, Points, Grid. May import:
 * surface.covariance.
 */
package fieldsalt.surface.site;
