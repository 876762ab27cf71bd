/**
 * Room of stage 7, handover: task data of ISO 11783-10. May import: handover.input, handover.table.
 */
package fieldsalt.handover.machine;
