/**
 * Room of stage 1, read: words and numbers as people and laboratories write them. Takes: text of a
 * cell. Gives: a method, a unit, a depth, a date, a texture, a number. May import: the leaves.
 */
package fieldsalt.read.word;
