/**
 * Room of stage 7, handover: the owner of each table that is written, and the catalogue of columns.
 * Takes: results of earlier stages. Gives: rows and features under the catalogue's names. May
 * import: handover.table, handover.input.
 */
package fieldsalt.handover.output;
