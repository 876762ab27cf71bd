/**
 * Room of stage 2, basis: the hand-over to the surface. Takes: depth means. Gives: SiteReadings,
 * rows with own errors and loadings on shared offsets. May import: basis.depth, basis.layer and
 * what they may.
 */
package fieldsalt.basis.site;
