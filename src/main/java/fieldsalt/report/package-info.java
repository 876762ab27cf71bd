/**
 * Stage 8 of 8: everything to the page that people look at, and the run record. May import: the
 * stages before it, the leaves.
 */
package fieldsalt.report;
