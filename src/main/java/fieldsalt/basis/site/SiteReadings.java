package fieldsalt.basis.site;

import fieldsalt.finding.Finding;
import fieldsalt.geo.PlaceM;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What the surface is fitted to: y = z(site) + H u + e. Values carry the published factor; u are
 * the offsets shared by many rows, with their prior covariance; e is independent from row to row.
 *
 * @param property what z is, with unit, e.g. {@code ECe} and {@code dS/m}
 * @param sites sorted by id (then date); rows refer to them by position
 * @param rows one per site and method after depth weighting, sorted by site
 * @param offsetCovariance prior covariance of u, square, in the order of {@code offsets}
 * @param fieldMeans readings of composite samples, which tell a field's mean and no place
 */
public record SiteReadings(
    String property,
    String unit,
    Scale scale,
    List<Site> sites,
    List<Row> rows,
    List<String> offsets,
    double[][] offsetCovariance,
    List<FieldMean> fieldMeans,
    List<Finding> findings) {
  /** The property that crops respond to. */
  public static final String ECE = "ECe";

  /** Readings without composites. */
  public SiteReadings(
      String property,
      String unit,
      Scale scale,
      List<Site> sites,
      List<Row> rows,
      List<String> offsets,
      double[][] offsetCovariance,
      List<Finding> findings) {
    this(property, unit, scale, sites, rows, offsets, offsetCovariance, List.of(), findings);
  }

  /** One id at one place and date: its rows share one true value, micro-scale included. */
  public record Site(String id, String field, PlaceM place, Optional<LocalDate> date) {}

  /**
   * One value.
   *
   * @param site index into {@code sites}
   * @param value ln of the property (scale LOG) or the property itself (NATURAL)
   * @param ownVariance of e, at least 0, in the unit of value squared
   * @param loadings the non-zero elements of this row of H
   * @param paste whether it is a direct reading of the basis itself (saturated paste)
   * @param laboratory for leaving one laboratory out
   */
  public record Row(
      int site,
      double value,
      double ownVariance,
      List<Loading> loadings,
      boolean paste,
      String method,
      String laboratory) {
    public Row {
      loadings = List.copyOf(loadings);
    }
  }

  /**
   * One reading of cores from all over a field, mixed: of the arithmetic mean, not of its
   * logarithm.
   *
   * @param sample which mixture; readings of one share what its cores missed
   * @param value ln of the mean (scale LOG) or the mean itself (NATURAL)
   * @param ownVariance of its laboratory and conversion, independent of every other row
   * @param loadings as in a row
   * @param cores that were mixed, at least 1
   */
  public record FieldMean(
      String sample,
      String field,
      double value,
      double ownVariance,
      List<Loading> loadings,
      int cores) {
    public FieldMean {
      loadings = List.copyOf(loadings);
    }
  }

  /** Weight of one shared offset in a row. */
  public record Loading(int offset, double weight) {}

  public SiteReadings {
    sites = List.copyOf(sites);
    rows = List.copyOf(rows);
    offsets = List.copyOf(offsets);
    fieldMeans = List.copyOf(fieldMeans);
    findings = List.copyOf(findings);
  }

  /** Whether salinity of the saturated paste is what was read. */
  public boolean isEce() {
    return property.equals(ECE);
  }

  /** Whether a surface through other readings is this one's: all is the same but the findings. */
  public boolean hasTheValuesOf(SiteReadings other) {
    return scale == other.scale
        && property.equals(other.property)
        && sites.equals(other.sites)
        && rows.equals(other.rows)
        && offsets.equals(other.offsets)
        && Arrays.deepEquals(offsetCovariance, other.offsetCovariance)
        && fieldMeans.equals(other.fieldMeans);
  }

  /** Variance of a field's values; 0 without two of them. */
  public double spread(String field) {
    double[] own =
        rows.stream()
            .filter(r -> sites.get(r.site()).field().equals(field))
            .mapToDouble(Row::value)
            .toArray();
    double mean = Arrays.stream(own).average().orElse(0);
    return Arrays.stream(own).map(v -> (v - mean) * (v - mean)).average().orElse(0);
  }

  /** The same without the rows and composites of some fields. */
  public SiteReadings without(Set<String> fields) {
    return fields.isEmpty()
        ? this
        : new SiteReadings(
            property,
            unit,
            scale,
            sites,
            rows.stream().filter(r -> !fields.contains(sites.get(r.site()).field())).toList(),
            offsets,
            offsetCovariance,
            fieldMeans.stream().filter(m -> !fields.contains(m.field())).toList(),
            findings);
  }

  /** The same sites and offsets with other rows. */
  public SiteReadings withRows(List<Row> other) {
    return new SiteReadings(
        property, unit, scale, sites, other, offsets, offsetCovariance, fieldMeans, findings);
  }
}
