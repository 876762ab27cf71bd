/**
 * Room of stage 2, basis: one layer of one sample on the basis of the paste. Takes: samples. Gives:
 * LayerReading with its errors and offsets. May import: basis.relation, basis.setting, basis.soil.
 */
package fieldsalt.basis.layer;
