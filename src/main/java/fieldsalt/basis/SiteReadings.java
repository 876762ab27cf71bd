package fieldsalt.basis;

import fieldsalt.finding.Finding;
import fieldsalt.geo.PlaceM;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What the surface is fitted to: y = z(site) + H u + e. Values carry the published factor; u are
 * the offsets shared by many rows, with their prior covariance; e is independent from row to row.
 *
 * @param property what z is, with unit, e.g. {@code ECe} and {@code dS/m}
 * @param sites sorted by id (then date); rows refer to them by position
 * @param rows one per site and method after depth weighting, sorted by site
 * @param offsetCovariance prior covariance of u, square, in the order of {@code offsets}
 */
public record SiteReadings(
    String property,
    String unit,
    Scale scale,
    List<Site> sites,
    List<Row> rows,
    List<String> offsets,
    double[][] offsetCovariance,
    List<Finding> findings) {

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

  /** Weight of one shared offset in a row. */
  public record Loading(int offset, double weight) {}

  public SiteReadings {
    sites = List.copyOf(sites);
    rows = List.copyOf(rows);
    offsets = List.copyOf(offsets);
    findings = List.copyOf(findings);
  }
}
