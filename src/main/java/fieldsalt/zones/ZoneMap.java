package fieldsalt.zones;

import fieldsalt.finding.Finding;
import java.util.List;
import java.util.Map;

/**
 * All zones of the ranch.
 *
 * @param changedHaByField area whose class was changed because a piece was too small or too thin
 * @param varianceExplainedByField share of the variance of ln ECe between the zones, 0 to 1
 * @param uncertainHaByField area where the chance to be above the class limit nearest in value is
 *     between 0.2 and 0.8
 */
public record ZoneMap(
    List<Zone> zones,
    Map<String, Double> changedHaByField,
    Map<String, Double> varianceExplainedByField,
    Map<String, Double> uncertainHaByField,
    List<Finding> findings) {
  public ZoneMap {
    zones = List.copyOf(zones);
    changedHaByField = Map.copyOf(changedHaByField);
    varianceExplainedByField = Map.copyOf(varianceExplainedByField);
    uncertainHaByField = Map.copyOf(uncertainHaByField);
    findings = List.copyOf(findings);
  }
}
