/**
 * Room of stage 3, surface: fast prediction. Takes: a solved model and places. Gives: estimates and
 * variances; equal to gaussian to 1e-9. May import: surface.fit, surface.site, surface.covariance.
 */
package fieldsalt.surface.kernel;
