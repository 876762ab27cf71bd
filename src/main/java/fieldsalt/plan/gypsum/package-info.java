/**
 * Room of stage 6, plan: gypsum: need, passes, rates a machine can spread. May import: plan.zone,
 * plan.soil, plan.setting.
 */
package fieldsalt.plan.gypsum;
