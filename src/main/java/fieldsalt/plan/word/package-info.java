/**
 * Room of stage 6, plan: sentences with their numbers as measures; situations, steps. May import:
 * the leaves.
 */
package fieldsalt.plan.word;
