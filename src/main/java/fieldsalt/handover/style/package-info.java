/**
 * Room of stage 7, handover: styled layer descriptors. May import: handover.input, handover.raster.
 */
package fieldsalt.handover.style;
