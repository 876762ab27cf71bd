/**
 * Room of stage 3, surface: variogram models and covariances by distance in metres. May import:
 * gaussian.
 */
package fieldsalt.surface.covariance;
