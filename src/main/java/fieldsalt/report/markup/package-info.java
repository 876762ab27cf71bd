/**
 * Room of stage 8, report: elements, tables, numbers as people read them; every text escaped. May
 * import: quantity.
 */
package fieldsalt.report.markup;
