/**
 * Room of stage 6, plan: what is said of a plan, in sentences made from its values. May import: the
 * other rooms of the plan.
 */
package fieldsalt.plan.word;
