/**
 * Room of stage 5, zones: classes on a lattice of nodes. Gives: regions, components, neighbours.
 * May import: the leaves.
 */
package fieldsalt.zones.lattice;
