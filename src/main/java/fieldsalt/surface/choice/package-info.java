/**
 * Room of stage 3, surface: which predictor is used. Takes: candidates with their leave-one-out
 * scores. Gives: the chosen one, and why. May import: surface.area and what that may.
 */
package fieldsalt.surface.choice;
