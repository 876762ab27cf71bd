/**
 * Room of stage 1, read: one laboratory row. Takes: cells. Gives: Sample. May import: read.field,
 * read.file, read.job, read.table, read.word.
 */
package fieldsalt.read.sample;
