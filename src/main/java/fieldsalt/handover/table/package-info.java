/**
 * Room of stage 7, handover: columns and features, and files of them: CSV, GeoJSON, GeoPackage,
 * Shapefile. May import: the leaves.
 */
package fieldsalt.handover.table;
