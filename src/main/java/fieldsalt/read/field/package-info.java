/**
 * Room of stage 1, read: field boundaries. Takes: features. Gives: FieldBoundary, in degrees and
 * metres. May import: read.file, read.table, read.word.
 */
package fieldsalt.read.field;
