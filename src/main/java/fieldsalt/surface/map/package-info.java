/**
 * Room of stage 3, surface: grids. Takes: the chosen predictor. Gives: SurfaceMap, strips of it,
 * distributions at points. May import: surface.choice and what that may.
 */
package fieldsalt.surface.map;
