package fieldsalt.zones.field;

import fieldsalt.classes.ClassScheme;
import fieldsalt.finding.Finding;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * All zones of the ranch, field by field in the order of the fields, each field's zones in the
 * order of their numbers.
 *
 * @param changedHaByField area whose class was changed because a piece was too small or too thin
 * @param varianceExplainedByField share of the variance of ln ECe between the zones, 0 to 1
 * @param uncertainHaByField area where the chance to be above the class limit nearest in value is
 *     between 0.2 and 0.8, or that of the second criterion's limit
 * @param figuresByZone what the map's cells say of each zone, by its name
 * @param schemeByField the classes that were used
 */
public record ZoneMap(
    List<Zone> zones,
    Map<String, Double> changedHaByField,
    Map<String, Double> varianceExplainedByField,
    Map<String, Double> uncertainHaByField,
    List<Finding> findings,
    Map<String, ZoneFigures> figuresByZone,
    Map<String, ClassScheme> schemeByField) {
  public ZoneMap {
    zones = List.copyOf(zones);
    changedHaByField = Map.copyOf(changedHaByField);
    varianceExplainedByField = Map.copyOf(varianceExplainedByField);
    uncertainHaByField = Map.copyOf(uncertainHaByField);
    findings = List.copyOf(findings);
    figuresByZone = Map.copyOf(figuresByZone);
    schemeByField = Map.copyOf(schemeByField);
  }

  /** Without figures by zone and without schemes. */
  public ZoneMap(
      List<Zone> zones,
      Map<String, Double> changedHaByField,
      Map<String, Double> varianceExplainedByField,
      Map<String, Double> uncertainHaByField,
      List<Finding> findings) {
    this(
        zones,
        changedHaByField,
        varianceExplainedByField,
        uncertainHaByField,
        findings,
        Map.of(),
        Map.of());
  }

  /** Those of single fields together. */
  public static ZoneMap joined(List<ZoneMap> fields) {
    return new ZoneMap(
        fields.stream().flatMap(f -> f.zones.stream()).toList(),
        joined(fields, ZoneMap::changedHaByField),
        joined(fields, ZoneMap::varianceExplainedByField),
        joined(fields, ZoneMap::uncertainHaByField),
        fields.stream().flatMap(f -> f.findings.stream()).toList(),
        joined(fields, ZoneMap::figuresByZone),
        joined(fields, ZoneMap::schemeByField));
  }

  private static <T> Map<String, T> joined(
      List<ZoneMap> fields, Function<ZoneMap, Map<String, T>> part) {
    Map<String, T> all = new HashMap<>();
    fields.forEach(f -> all.putAll(part.apply(f)));
    return all;
  }

  /** The zones of one field, in the order of their numbers. */
  public List<Zone> zonesOf(String field) {
    return zones.stream().filter(z -> z.field().equals(field)).toList();
  }
}
