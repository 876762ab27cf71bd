/**
 * Room of stage 3, surface: means over areas and composites. Takes: points of areas. Gives: means
 * with their joint covariance. May import: surface.kernel and what that may.
 */
package fieldsalt.surface.area;
