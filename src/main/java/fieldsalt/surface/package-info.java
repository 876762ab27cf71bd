/**
 * Stage 3 of 8: SiteReadings to a Surface: grids, and joint moments at any points. Knows no soil
 * and no crop. May import: read, basis, the leaves.
 */
package fieldsalt.surface;
