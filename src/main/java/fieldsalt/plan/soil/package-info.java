/**
 * Room of stage 6, plan: what the plan knows of ground: evidence, soil properties, salt of zones.
 * May import: plan.draw, plan.setting.
 */
package fieldsalt.plan.soil;
