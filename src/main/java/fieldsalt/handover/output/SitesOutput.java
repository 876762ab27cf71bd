package fieldsalt.handover.output;

import fieldsalt.basis.pair.ConvertedReadings;
import fieldsalt.basis.site.ReadingErrors;
import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.gaussian.Normal;
import fieldsalt.handover.input.SampleFeature;
import fieldsalt.handover.table.Rounding;
import fieldsalt.surface.fit.SurfaceDetails;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Owner of the sites' columns: samples.geojson, layer {@code samples} of the GeoPackage. */
public final class SitesOutput {
  private static final OutputColumns COLUMNS = OutputColumns.of("samples.geojson");
  private static final double Z90 = Normal.quantile(0.95);

  private final SiteReadings readings;
  private final ReadingErrors errors;
  private final Map<Key, List<ConvertedReadings.Row>> converted;

  private record Key(String field, String id) {}

  private SitesOutput(SiteReadings readings, Optional<ConvertedReadings> converted) {
    this.readings = readings;
    this.errors = ReadingErrors.of(readings);
    this.converted =
        converted.map(ConvertedReadings::rows).orElse(List.of()).stream()
            .collect(Collectors.groupingBy(r -> new Key(r.sample().field(), r.sample().id())));
  }

  /** One feature per site of the surface: its best row with the interval of the reading. */
  public static List<SampleFeature> features(
      SiteReadings readings,
      Optional<ConvertedReadings> converted,
      List<SurfaceDetails.Doubtful> doubtful) {
    SitesOutput output = new SitesOutput(readings, converted);
    Map<Key, SurfaceDetails.Doubtful> doubts =
        doubtful.stream()
            .collect(
                Collectors.toMap(
                    d -> new Key(d.field(), d.siteId()), Function.identity(), (a, b) -> a));
    List<SampleFeature> features = new ArrayList<>();
    for (int s = 0; s < readings.sites().size(); s++) {
      List<SiteReadings.Row> rows = output.errors.ofSite(s);
      if (!rows.isEmpty()) {
        SiteReadings.Site site = readings.sites().get(s);
        Map<String, Object> figures = output.figures(site, rows);
        Optional.ofNullable(doubts.get(new Key(site.field(), site.id())))
            .ifPresent(d -> figures.putAll(output.doubt(d)));
        features.add(new SampleFeature(site.id(), site.field(), site.place(), figures));
      }
    }
    return features;
  }

  private Map<String, Object> figures(SiteReadings.Site site, List<SiteReadings.Row> rows) {
    double value = rows.get(0).value();
    double half = Z90 * Math.sqrt(errors.variance(rows.get(0)));
    String name = readings.isEce() ? "ece" : "value";
    Map<String, Object> figures =
        new LinkedHashMap<>(
            COLUMNS.figures(
                readings.isEce() ? "ece_dS_m" : "value",
                back(value),
                name + "_low",
                back(value - half),
                name + "_high",
                back(value + half)));
    site.date().ifPresent(date -> figures.putAll(COLUMNS.figures("date", date.toString())));
    List<ConvertedReadings.Row> own =
        converted.getOrDefault(new Key(site.field(), site.id()), List.of());
    figures.putAll(
        COLUMNS.figures(
            "methods",
            String.join(", ", new TreeSet<>(rows.stream().map(SiteReadings.Row::method).toList())),
            "relation",
            joined(own, ConvertedReadings.Row::relation),
            "citation",
            joined(own, ConvertedReadings.Row::citation),
            "findings",
            findings(own)));
    return figures;
  }

  /** What the others suggest, where a site is in doubt. */
  private Map<String, Object> doubt(SurfaceDetails.Doubtful d) {
    return COLUMNS.figures(
        "doubt",
        Rounding.fourDigits(d.chance()),
        "suggested",
        Rounding.fourDigits(d.suggested()),
        "suggested_low",
        Rounding.fourDigits(d.low()),
        "suggested_high",
        Rounding.fourDigits(d.high()));
  }

  private Double back(double value) {
    return Rounding.fourDigits(readings.scale() == Scale.LOG ? Math.exp(value) : value);
  }

  private static String joined(
      List<ConvertedReadings.Row> rows, Function<ConvertedReadings.Row, String> part) {
    return rows.stream()
        .map(part)
        .filter(text -> !text.isBlank())
        .distinct()
        .sorted()
        .collect(Collectors.joining("; "));
  }

  private static String findings(List<ConvertedReadings.Row> rows) {
    return rows.stream()
        .flatMap(row -> row.findings().stream())
        .map(f -> f.code().id())
        .distinct()
        .sorted()
        .collect(Collectors.joining(", "));
  }
}
