/**
 * Leaf: the one engine for uncertainty, a Gaussian state with a flat prior on fixed effects. Knows
 * no soil and no place. May import: nothing of fieldsalt.
 *
 * <p>{@link fieldsalt.gaussian.GaussianState} is the plain form: observe, contrast, gain. {@link
 * fieldsalt.gaussian.MixedModel} gives the same answers in one solve for many data in independent
 * blocks, with likelihood and leave-one-out.
 */
package fieldsalt.gaussian;
