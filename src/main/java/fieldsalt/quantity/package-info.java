/**
 * Leaf: units and the small words of the trade as enums and records. May import: nothing of
 * fieldsalt.
 */
package fieldsalt.quantity;
