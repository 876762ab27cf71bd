/**
 * Room of stage 7, handover: what is handed over: zones, sites, machine job, labels. May import:
 * handover.table.
 */
package fieldsalt.handover.input;
