/**
 * Room of stage 8, report: sections of the page. May import: report.draw, report.input,
 * report.markup.
 */
package fieldsalt.report.section;
