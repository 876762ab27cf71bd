/**
 * Room of stage 1, read: the job file. Takes: YAML and settings of the command line. Gives:
 * JobDocument, checked key by key; its template and its schema. May import: read.file, read.table,
 * read.word.
 */
package fieldsalt.read.job;
