/**
 * Room of stage 2, basis: what the soil of a sample says: saturation percentage, bulk density,
 * group, ions. Takes: Sample. Gives: numbers with their source. May import: the leaves, read.
 */
package fieldsalt.basis.soil;
