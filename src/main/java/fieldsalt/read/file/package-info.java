/**
 * Room of stage 1, read: files as they are on disk. Takes: a path. Gives: raw tables, features,
 * rows with their numbers, and notes on what was found. May import: read.word.
 */
package fieldsalt.read.file;
