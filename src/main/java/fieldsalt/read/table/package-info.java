/**
 * Room of stage 1, read: sheets with a header. Takes: raw tables. Gives: columns under our names,
 * cells by row. May import: read.file, read.word.
 */
package fieldsalt.read.table;
