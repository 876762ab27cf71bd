package fieldsalt.pipeline;

import fieldsalt.basis.pair.ConvertedReadings;
import fieldsalt.basis.site.ReadingErrors;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.handover.input.SampleFeature;
import fieldsalt.handover.input.ZoneFeature;
import fieldsalt.plan.soil.ZoneGround;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.surface.area.AreaMeans;
import fieldsalt.zones.field.Zone;
import fieldsalt.zones.sodicity.Sodicity;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Figures of zones and sites under the names that the files give them. */
final class Features {
  private static final double Z90 = 1.6448536269514722;

  private final Prepared prepared;
  private final Mapped mapped;
  private final Planned planned;

  Features(Prepared prepared, Mapped mapped, Planned planned) {
    this.prepared = prepared;
    this.mapped = mapped;
    this.planned = planned;
  }

  List<ZoneFeature> zones() {
    List<ZoneFeature> features = new ArrayList<>();
    List<Zone> zones = mapped.zones().zones();
    for (int z = 0; z < zones.size(); z++) {
      int classes = mapped.schemes().get(zones.get(z).field()).labels().size();
      boolean sodic =
          Optional.ofNullable(sodicity().get(zones.get(z).name()))
              .map(Sodicity.OfZone::isSodic)
              .orElse(false);
      features.add(new ZoneFeature(zones.get(z), zoneFigures(zones.get(z), z), classes, sodic));
    }
    return features;
  }

  private Map<String, Object> zoneFigures(Zone zone, int index) {
    AreaMeans means = planned.means();
    Map<String, Object> figures = new LinkedHashMap<>();
    String name = prepared.isEce() ? "ece" : "value";
    figures.put(prepared.isEce() ? "ece_dS_m" : "value", round(means.mean()[index]));
    figures.put(name + "_low", round(means.low()[index]));
    figures.put(name + "_high", round(means.high()[index]));
    figures.put("p_above", round(mapped.zones().figuresByZone().get(zone.name()).chanceAbove()));
    mapped.sodicity().ifPresent(s -> sodicity(zone, figures));
    plan(zone).ifPresent(plan -> figures.putAll(plan.toProperties()));
    return figures;
  }

  /** Both classes by themselves, and the figures of the second; null where sodium is not known. */
  private void sodicity(Zone zone, Map<String, Object> figures) {
    Optional<Sodicity.OfZone> of = Optional.ofNullable(sodicity().get(zone.name()));
    figures.put("salinity", mapped.schemes().get(zone.field()).labels().get(zone.klass()));
    figures.put("sodicity", of.map(Sodicity.OfZone::label).orElse(null));
    figures.put("sodic_by", of.map(s -> s.by().property().label()).orElse(null));
    figures.put("sodic_mean", of.map(s -> round(s.mean())).orElse(null));
    figures.put("sodic_low", of.map(s -> round(s.low())).orElse(null));
    figures.put("sodic_high", of.map(s -> round(s.high())).orElse(null));
    figures.put("p_sodic", of.map(s -> round(chanceSodic(zone))).orElse(null));
  }

  double chanceSodic(Zone zone) {
    return mapped.zones().figuresByZone().get(zone.name()).secondChance().orElse(Double.NaN);
  }

  private Map<String, Sodicity.OfZone> sodicityByZone;

  /** Sodicity by zone; empty unless zones are divided by it. */
  Map<String, Sodicity.OfZone> sodicity() {
    if (sodicityByZone == null) {
      sodicityByZone =
          mapped
              .sodicity()
              .map(
                  s ->
                      s.zones(
                          mapped.zones().zones(),
                          planned.grounds().stream().map(ZoneGround::points).toList(),
                          mapped.schemes()))
              .orElse(Map.of());
    }
    return sodicityByZone;
  }

  Optional<ZonePlan> plan(Zone zone) {
    return planned
        .plan()
        .flatMap(ranch -> ranch.zones().stream().filter(p -> p.zone().equals(zone)).findFirst());
  }

  /** One feature a site of the surface: its best row with the interval of the reading. */
  List<SampleFeature> samples() {
    SiteReadings readings = prepared.readings();
    ReadingErrors errors = ReadingErrors.of(readings);
    List<SampleFeature> features = new ArrayList<>();
    for (int s = 0; s < readings.sites().size(); s++) {
      List<SiteReadings.Row> rows = errors.ofSite(s);
      if (!rows.isEmpty()) {
        SiteReadings.Site site = readings.sites().get(s);
        features.add(
            new SampleFeature(site.id(), site.field(), site.place(), figures(site, rows, errors)));
      }
    }
    return features;
  }

  private Map<String, Object> figures(
      SiteReadings.Site site, List<SiteReadings.Row> rows, ReadingErrors errors) {
    SiteReadings readings = prepared.readings();
    double value = rows.get(0).value();
    double sd = Math.sqrt(errors.variance(rows.get(0)));
    boolean log = readings.scale() == fieldsalt.basis.site.Scale.LOG;
    String name = prepared.isEce() ? "ece" : "value";
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put(prepared.isEce() ? "ece_dS_m" : "value", round(back(value, log)));
    figures.put(name + "_low", round(back(value - Z90 * sd, log)));
    figures.put(name + "_high", round(back(value + Z90 * sd, log)));
    site.date().ifPresent(date -> figures.put("date", date.toString()));
    figures.put("methods", methods(rows));
    figures.put("relation", joined(site, ConvertedReadings.Row::relation));
    figures.put("citation", joined(site, ConvertedReadings.Row::citation));
    figures.put("findings", findings(site));
    return figures;
  }

  private static String methods(List<SiteReadings.Row> rows) {
    TreeSet<String> methods = new TreeSet<>();
    for (SiteReadings.Row row : rows) {
      methods.add(row.method());
    }
    return String.join(", ", methods);
  }

  private String joined(
      SiteReadings.Site site, java.util.function.Function<ConvertedReadings.Row, String> part) {
    return rowsOf(site).stream()
        .map(part)
        .filter(text -> !text.isBlank())
        .distinct()
        .sorted()
        .collect(Collectors.joining("; "));
  }

  private String findings(SiteReadings.Site site) {
    return rowsOf(site).stream()
        .flatMap(row -> row.findings().stream())
        .map(f -> f.code().id())
        .distinct()
        .sorted()
        .collect(Collectors.joining(", "));
  }

  private List<ConvertedReadings.Row> rowsOf(SiteReadings.Site site) {
    return prepared
        .converted()
        .map(c -> byId().getOrDefault(key(site), List.of()))
        .orElse(List.of());
  }

  private Map<String, List<ConvertedReadings.Row>> rowsById;

  private Map<String, List<ConvertedReadings.Row>> byId() {
    if (rowsById == null) {
      rowsById =
          prepared.converted().orElseThrow().rows().stream()
              .collect(Collectors.groupingBy(r -> r.sample().field() + "\u0000" + r.sample().id()));
    }
    return rowsById;
  }

  private static String key(SiteReadings.Site site) {
    return site.field() + "\u0000" + site.id();
  }

  private static double back(double value, boolean log) {
    return log ? Math.exp(value) : value;
  }

  /** Four significant digits: more than any of these figures deserves. */
  static Object round(double value) {
    if (!Double.isFinite(value)) {
      return null;
    }
    return new java.math.BigDecimal(value).round(new java.math.MathContext(4)).doubleValue();
  }
}
