/**
 * Leaf: published tables and coefficients as resources, with their citations and confidence. No
 * decisions. May import: quantity.
 */
package fieldsalt.facts;
