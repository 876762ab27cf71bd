/**
 * Stage 7 of 8: everything to the files that GIS programs and machine terminals read. May import:
 * the stages before it, the leaves.
 */
package fieldsalt.handover;
