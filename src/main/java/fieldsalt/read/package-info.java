/**
 * Stage 1 of 8: files to Sample, FieldBoundary, SurveyReading and JobDocument. Takes paths; gives
 * records in metres, dS/m and cm, with a finding for each thing that was corrected or left out. May
 * import: the leaves.
 */
package fieldsalt.read;
