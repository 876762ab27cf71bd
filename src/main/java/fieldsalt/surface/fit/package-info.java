/**
 * Room of stage 3, surface: covariance parameters from data. Takes: Observations. Gives: fitted
 * models, averaging nodes, leave-one-out, influence. May import: surface.site, surface.covariance.
 */
package fieldsalt.surface.fit;
