/** Room of stage 8, report: charts and pictures in SVG. May import: report.input, report.markup. */
package fieldsalt.report.draw;
