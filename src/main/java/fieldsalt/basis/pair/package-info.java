/**
 * Room of stage 2, basis: what pairs of methods say of the factors. Takes: layers read twice.
 * Gives: factors before and after pairs, the table of converted readings. May import: basis.layer,
 * basis.site and what they may.
 */
package fieldsalt.basis.pair;
