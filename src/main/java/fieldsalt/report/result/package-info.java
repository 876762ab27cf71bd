/**
 * Room of stage 8, report: results of the stages, as page and run record take them. May import:
 * results of earlier stages.
 */
package fieldsalt.report.result;
