package fieldsalt.handover.input;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/**
 * What the spreader is told.
 *
 * @param ranch name of the ranch: customer and farm of the task data
 * @param product as the user named it
 * @param swathM working width of the machine
 * @param version of the task data: 4 (second edition of ISO 11783-10) or 3 (first)
 * @param rateMgPerHaByZone product per hectare and pass by zone name, within what the machine can
 *     spread; a zone that is not named gets 0
 * @param drafts fields whose plan is a draft; their tasks say so
 * @param passesByZone how many times a zone is driven at its rate; once where it is not named
 */
public record MachineJob(
    String ranch,
    String product,
    double swathM,
    int version,
    Map<String, Double> rateMgPerHaByZone,
    Map<String, Integer> passesByZone,
    Set<String> drafts) {
  public MachineJob {
    drafts = Set.copyOf(drafts);
    rateMgPerHaByZone = new LinkedHashMap<>(rateMgPerHaByZone);
    passesByZone = new LinkedHashMap<>(passesByZone);
    if (version != 3 && version != 4) {
      throw new IllegalArgumentException("task data has version 3 or 4, was " + version);
    }
    if (!(swathM > 0)) {
      throw new IllegalArgumentException("a swath is wider than 0 m, was " + swathM);
    }
  }

  /** Everything in one pass. */
  public static MachineJob inOnePass(
      String ranch,
      String product,
      double swathM,
      int version,
      Map<String, Double> rateMgPerHaByZone) {
    return new MachineJob(ranch, product, swathM, version, rateMgPerHaByZone, Map.of(), Set.of());
  }

  public double rateMgPerHa(String zone) {
    return rateMgPerHaByZone.getOrDefault(zone, 0.0);
  }

  /** The rate of a zone in a pass, the first being 1: nothing once all its passes are driven. */
  public double rateMgPerHa(String zone, int pass) {
    return pass <= passesByZone.getOrDefault(zone, 1) ? rateMgPerHa(zone) : 0;
  }

  public int passes() {
    return passesByZone.values().stream().mapToInt(n -> n).max().orElse(1);
  }
}
