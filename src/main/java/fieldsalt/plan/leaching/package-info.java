/**
 * Room of stage 6, plan: leaching requirement and reclamation depth. May import: plan.zone,
 * plan.soil, plan.setting, plan.word.
 */
package fieldsalt.plan.leaching;
