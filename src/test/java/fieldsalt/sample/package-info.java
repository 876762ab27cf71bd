/** Test data: an invented ranch whose truth is known, its seeded generator and its files. */
package fieldsalt.sample;
