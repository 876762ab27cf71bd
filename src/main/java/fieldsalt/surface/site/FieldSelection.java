package fieldsalt.surface.site;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.finding.Place;
import fieldsalt.read.field.FieldBoundary;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;

/**
 * Which fields can be mapped: those with at least 3 sites.
 *
 * @param mapped sorted by name
 * @param leftOut names of fields with 1 or 2 sites
 */
public record FieldSelection(
    List<FieldBoundary> mapped, List<String> leftOut, List<Finding> findings) {
  static final int FEWEST_SITES = 3;

  /**
   * Counts sites with rows.
   *
   * @throws InputProblem if no field has 3 sites
   */
  public static FieldSelection of(SiteReadings readings, List<FieldBoundary> boundaries) {
    TreeMap<String, Integer> sites = new TreeMap<>();
    readings.rows().stream()
        .map(SiteReadings.Row::site)
        .distinct()
        .forEach(s -> sites.merge(readings.sites().get(s).field(), 1, Integer::sum));
    List<FieldBoundary> sorted =
        boundaries.stream().sorted(Comparator.comparing(FieldBoundary::name)).toList();
    FieldSelection selection =
        new FieldSelection(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
    for (FieldBoundary field : sorted) {
      selection.add(field, sites.getOrDefault(field.name(), 0));
    }
    if (selection.mapped.isEmpty()) {
      throw new InputProblem(sorted.stream().map(f -> problem(f, sites)).toList());
    }
    return selection;
  }

  private static InputProblem.Problem problem(FieldBoundary field, TreeMap<String, Integer> sites) {
    return new InputProblem.Problem(
        "field " + field.name(),
        count(sites.getOrDefault(field.name(), 0)) + " with a usable reading",
        "at least " + FEWEST_SITES,
        "Sample at least 3 places in this field, better 10 or more.");
  }

  private static String count(int sites) {
    return sites == 0 ? "no site" : sites == 1 ? "1 site" : sites + " sites";
  }

  private void add(FieldBoundary field, int sites) {
    if (sites >= FEWEST_SITES) {
      mapped.add(field);
    } else if (sites == 0) {
      findings.add(
          new Finding(
              Code.FIELD_WITHOUT_SITES,
              Place.field(field.name()),
              "no site",
              "not mapped; sample it"));
    } else {
      leftOut.add(field.name());
      findings.add(
          new Finding(
              Code.FIELD_LEFT_OUT,
              Place.field(field.name()),
              count(sites) + ", a map needs 3",
              "left out of the map and of every table; sample at least 3 places in it"));
    }
  }
}
