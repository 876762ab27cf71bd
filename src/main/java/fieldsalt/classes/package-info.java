/**
 * Stage 4 of 8: a Surface and a crop to yield, chance and class. May import: read, basis, surface,
 * the leaves.
 */
package fieldsalt.classes;
