/**
 * Room of stage 1, read: places of samples, and surveys. Takes: lists of sites, samples without
 * places, survey tables. Gives: samples by field, SurveyReading. May import: read.sample and what
 * that may.
 */
package fieldsalt.read.site;
