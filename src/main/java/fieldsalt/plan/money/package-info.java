/**
 * Room of stage 6, plan: what a treatment is expected to cost and to bring. May import:
 * plan.gypsum, plan.leaching, plan.zone.
 */
package fieldsalt.plan.money;
