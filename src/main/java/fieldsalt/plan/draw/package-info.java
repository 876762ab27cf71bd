/** Room of stage 6, plan: futures: joint draws of what is not known. May import: gaussian. */
package fieldsalt.plan.draw;
