/**
 * Leaf: the one engine for uncertainty, a Gaussian state with a flat prior on fixed effects. Knows
 * no soil and no place. May import: nothing of fieldsalt.
 */
package fieldsalt.gaussian;
