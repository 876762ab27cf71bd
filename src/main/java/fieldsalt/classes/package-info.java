/**
 * Stage 4 of 8: a crop to yield and class. Takes a crop of the table and the readings' error; gives
 * the class scheme of a field ({@code ClassSchemes}) and the response of yield to salt ({@code
 * YieldModel}). May import: read, basis, surface, the leaves.
 */
package fieldsalt.classes;
