/** Room of stage 8, report: run.json. May import: report.input. */
package fieldsalt.report.record;
