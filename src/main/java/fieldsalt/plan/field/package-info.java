/**
 * Room of stage 6, plan: comparisons over a field: one rate or by zone, crops. May import:
 * plan.money and what that may.
 */
package fieldsalt.plan.field;
