/**
 * Stage 5 of 8: classes to polygons that tile the field. May import: read, basis, surface, classes,
 * the leaves.
 */
package fieldsalt.zones;
