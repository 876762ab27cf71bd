/**
 * Room of stage 5, zones: sodicity as the second property that cuts zones. Takes: surfaces of ESP
 * or SAR. Gives: a criterion for each field, and what each zone has of it. May import: zones.field.
 */
package fieldsalt.zones.sodicity;
