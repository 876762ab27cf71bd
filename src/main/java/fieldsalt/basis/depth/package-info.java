/**
 * Room of stage 2, basis: layers to one depth. Takes: layers of a site. Gives: their mean over a
 * root zone or a treated layer, with what is missing. May import: basis.layer and what that may.
 */
package fieldsalt.basis.depth;
