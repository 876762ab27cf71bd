package fieldsalt.report.terminal;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.basis.site.SiteReadings.Site;
import fieldsalt.classes.ClassScheme;
import fieldsalt.quantity.UnitSystem;
import fieldsalt.read.sample.Sample;
import fieldsalt.surface.fit.Accuracy;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.fit.SurfaceReport;
import fieldsalt.zones.field.Zone;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What a terminal shows of a run: sites, method, and the classes of each field or crop. */
public final class SummaryLines {
  private static final double HA_PER_ACRE = 0.40468564224;
  private static final int FIELDS_SHOWN = 5;

  private final SiteReadings readings;
  private final List<Sample> samples;
  private final List<Zone> zones;

  /**
   * @param readings that were mapped
   * @param samples as read
   */
  public SummaryLines(SiteReadings readings, List<Sample> samples, List<Zone> zones) {
    this.readings = readings;
    this.samples = samples;
    this.zones = zones;
  }

  /** Sites, method and hectares by class. */
  public List<String> of(SurfaceReport report, Map<String, ClassScheme> schemes, UnitSystem units) {
    List<String> lines = new ArrayList<>();
    lines.add(sites());
    lines.add(method(report));
    lines.addAll(areas(schemes, units));
    return lines;
  }

  /** How many sites and readings were used, in how many fields. */
  public String sites() {
    Set<String> fields = zones.stream().map(Zone::field).collect(Collectors.toSet());
    Set<Site> sites =
        readings.rows().stream()
            .map(row -> readings.sites().get(row.site()))
            .filter(site -> fields.contains(site.field()))
            .collect(Collectors.toSet());
    long readings =
        samples.stream()
            .filter(s -> s.composite() ? fields.contains(s.field()) : isOf(s, sites))
            .count();
    return String.format(
        Locale.ROOT,
        "%s used (%s) in %s",
        count(sites.size(), "site"),
        count(readings, "reading"),
        count(fields.size(), "field"));
  }

  private static String count(long n, String what) {
    return n + " " + what + (n == 1 ? "" : "s");
  }

  private static boolean isOf(Sample sample, Set<Site> sites) {
    return sample
        .place()
        .filter(p -> sites.contains(new Site(sample.id(), sample.field(), p, sample.date())))
        .isPresent();
  }

  private String method(SurfaceReport report) {
    String method =
        report.chosen() == SurfaceMethod.MEAN
            ? "mean of each field (nothing predicts unseen sites clearly better)"
            : report.chosen().label();
    String steered =
        report
            .steering()
            .filter(s -> report.chosen() != SurfaceMethod.DRIFT)
            .map(
                s ->
                    "steered by "
                        + String.join(", ", s.drifts())
                        + ": "
                        + fields(s.fields())
                        + "; elsewhere ")
            .orElse("");
    return "Method: " + steered + method + report.accuracy().map(this::inWords).orElse("");
  }

  private static String fields(List<String> names) {
    int more = names.size() - FIELDS_SHOWN;
    return String.join(", ", names.subList(0, Math.min(FIELDS_SHOWN, names.size())))
        + (more > 0 ? " and " + more + " more" : "");
  }

  private String inWords(Accuracy accuracy) {
    String size =
        readings.scale() == Scale.LOG
            ? String.format(Locale.ROOT, "a factor of %.2g", accuracy.typicalFactor())
            : String.format(Locale.ROOT, "%.2g %s", accuracy.rmse(), readings.unit());
    return String.format(
        Locale.ROOT,
        "; typically within %s at unseen sites, explains %.0f %% of their variance",
        size,
        100 * Math.max(0, accuracy.explained()));
  }

  /** Hectares per class, a line for each field, or for each crop where there are many fields. */
  private List<String> areas(Map<String, ClassScheme> schemes, UnitSystem units) {
    boolean us = units == UnitSystem.US;
    boolean many = schemes.size() > FIELDS_SHOWN;
    Map<String, Map<String, Double>> byGroup = new LinkedHashMap<>();
    for (Zone zone : zones) {
      String scheme = schemes.get(zone.field()).name();
      byGroup
          .computeIfAbsent(many ? scheme : zone.field(), f -> new TreeMap<>())
          .merge(key(zone), zone.areaHa() / (us ? HA_PER_ACRE : 1), Double::sum);
    }
    return byGroup.entrySet().stream()
        .map(e -> e.getKey() + ": " + classes(e.getValue(), us ? "acres" : "ha"))
        .toList();
  }

  /** Sorts by class, then is cut to the label. */
  private static String key(Zone zone) {
    return String.format(Locale.ROOT, "%02d", zone.klass()) + zone.label();
  }

  /** Classes of salt and sodium have a comma of their own. */
  private static String classes(Map<String, Double> areas, String unit) {
    boolean commas = areas.keySet().stream().anyMatch(k -> k.contains(","));
    return areas.entrySet().stream()
        .map(
            e ->
                String.format(
                    Locale.ROOT, "%.1f %s %s", e.getValue(), unit, e.getKey().substring(2)))
        .collect(Collectors.joining(commas ? "; " : ", "));
  }
}
