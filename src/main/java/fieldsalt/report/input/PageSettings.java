package fieldsalt.report.input;

import fieldsalt.quantity.UnitSystem;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What the page is told beside the results.
 *
 * @param units in which people are told areas, depths and rates; conductivity is always dS/m
 * @param version of fieldsalt
 * @param cropByField the crop's name as the table spells it; a field without a crop is absent
 * @param depthWords which soil the ECe stands for, by field, e.g. {@code 0 to 120 cm}
 * @param surveyPoints readings of the apparent-conductivity survey, 0 if there is none
 */
public record PageSettings(
    UnitSystem units,
    String version,
    Map<String, String> cropByField,
    Map<String, String> depthWords,
    int surveyPoints) {
  public PageSettings {
    cropByField = new LinkedHashMap<>(cropByField);
    depthWords = new LinkedHashMap<>(depthWords);
  }
}
