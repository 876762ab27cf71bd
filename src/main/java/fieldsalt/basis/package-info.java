/**
 * Stage 2 of 8: readings to ECe with its errors. Takes Sample; gives SiteReadings. May import:
 * read, the leaves.
 */
package fieldsalt.basis;
