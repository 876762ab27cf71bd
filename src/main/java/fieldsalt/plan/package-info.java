/**
 * Stage 6 of 8: zones to leaching, gypsum, yield and money. May import: the stages before it, the
 * leaves.
 */
package fieldsalt.plan;
