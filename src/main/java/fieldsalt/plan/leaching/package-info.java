/**
 * Room of stage 6, plan: leaching requirement, reclamation depth, boron. May import: plan.zone,
 * plan.soil, plan.setting.
 */
package fieldsalt.plan.leaching;
