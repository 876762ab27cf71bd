/**
 * Room of stage 2, basis: published relations between an extract and the saturated paste, one class
 * each. Takes: a reading with its soil. Gives: ECe with the error of the relation. May import:
 * basis.soil.
 */
package fieldsalt.basis.relation;
