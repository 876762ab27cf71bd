/**
 * Room of stage 8, report: what the page shows, as values. May import: results of earlier stages,
 * report.markup.
 */
package fieldsalt.report.input;
