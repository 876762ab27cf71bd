/**
 * Room of stage 8, report: what a terminal shows of a run. Takes: results of earlier stages. Gives:
 * lines.
 */
package fieldsalt.report.terminal;
