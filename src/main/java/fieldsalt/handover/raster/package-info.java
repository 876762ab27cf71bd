/** Room of stage 7, handover: GeoTIFF. May import: handover.table, handover.input. */
package fieldsalt.handover.raster;
