/**
 * Room of stage 7, handover: the output folder, whole or not at all. May import: nothing of
 * handover.
 */
package fieldsalt.handover.folder;
