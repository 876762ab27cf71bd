/**
 * Room of stage 6, plan: settings of the plan: water, ground, leaching, gypsum, machine, money,
 * crops. May import: the leaves.
 */
package fieldsalt.plan.setting;
