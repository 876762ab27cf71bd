/** Room of stage 6, plan: one zone: its situation and its plan as values. May import: plan.soil. */
package fieldsalt.plan.zone;
