/** Leaf: what a person must be told. May import: nothing of fieldsalt. */
package fieldsalt.finding;
