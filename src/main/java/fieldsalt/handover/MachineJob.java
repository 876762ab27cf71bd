package fieldsalt.handover;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What the spreader is told.
 *
 * @param ranch name of the ranch: customer and farm of the task data
 * @param product as the user named it
 * @param swathM working width of the machine
 * @param version of the task data: 4 (second edition of ISO 11783-10) or 3 (first)
 * @param rateMgPerHaByZone product per hectare by zone name, within what the machine can spread; a
 *     zone that is not named gets 0
 */
public record MachineJob(
    String ranch,
    String product,
    double swathM,
    int version,
    Map<String, Double> rateMgPerHaByZone) {
  public MachineJob {
    rateMgPerHaByZone = new LinkedHashMap<>(rateMgPerHaByZone);
    if (version != 3 && version != 4) {
      throw new IllegalArgumentException("task data has version 3 or 4, was " + version);
    }
    if (!(swathM > 0)) {
      throw new IllegalArgumentException("a swath is wider than 0 m, was " + swathM);
    }
  }

  double rateMgPerHa(String zone) {
    return rateMgPerHaByZone.getOrDefault(zone, 0.0);
  }
}
