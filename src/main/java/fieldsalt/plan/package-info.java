/**
 * Stage 6 of 8: zones to leaching, gypsum, yield and money.
 *
 * <p>Takes zones with points that stand for them, the surface of ln ECe, readings and surfaces of
 * SAR, ESP, CEC and bulk density, and the settings of water, ground, gypsum, machine, prices and
 * crops. Gives a {@code RanchPlan}: for every zone what to do, why, how much with its odds, what it
 * costs, and what undermines it. Entry: {@code Planner}. Numbers in sentences stay measures, so
 * that they can be told in either system of units. May import: the stages before it, the leaves.
 */
package fieldsalt.plan;
