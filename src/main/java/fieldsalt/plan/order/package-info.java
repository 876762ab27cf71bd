/**
 * Room of stage 6, plan: the plan of each zone in its order of work, draft marks. May import:
 * plan.money and what that may.
 */
package fieldsalt.plan.order;
