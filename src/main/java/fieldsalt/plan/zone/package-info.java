/**
 * Room of stage 6, plan: one zone: its situation and its plan as values. May import: plan.soil,
 * plan.word.
 */
package fieldsalt.plan.zone;
