package fieldsalt.report.input;

import fieldsalt.geo.PlaceM;
import fieldsalt.surface.fit.SurfaceReport;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.next.Proposal;
import fieldsalt.surface.next.Proposals;
import java.util.List;

/**
 * The surface and how far it can be trusted.
 *
 * @param bins the sample variogram of the converted readings; may be empty
 * @param accuracy share of sites inside their interval, by the chance it was made for
 * @param next what to measure next, the most useful first
 */
public record PageSurface(
    SurfaceReport report,
    List<SurfaceMap> maps,
    List<VariogramBin> bins,
    List<AccuracyPoint> accuracy,
    List<NextMeasurement> next) {
  public PageSurface {
    maps = List.copyOf(maps);
    bins = List.copyOf(bins);
    accuracy = List.copyOf(accuracy);
    next = List.copyOf(next);
  }

  /** The surface's own report for the page, and what to measure next. */
  public static PageSurface of(
      SurfaceReport report, List<SurfaceMap> maps, List<NextMeasurement> next) {
    List<VariogramBin> bins =
        report.details().sampleVariogram().stream()
            .map(l -> new VariogramBin(l.distanceM(), l.matheron(), l.pairs()))
            .toList();
    List<AccuracyPoint> accuracy =
        report.details().validation().stream()
            .limit(1)
            .flatMap(v -> v.coverage().stream())
            .map(c -> new AccuracyPoint(c.chance(), c.share()))
            .toList();
    return new PageSurface(report, maps, bins, accuracy, next);
  }

  /** Proposals in words. */
  public static List<NextMeasurement> next(Proposals proposals) {
    return proposals.best().stream().map(PageSurface::next).toList();
  }

  private static NextMeasurement next(Proposal p) {
    String sample = p.siteId() + " (field " + p.field() + ")";
    return new NextMeasurement(
        switch (p.kind()) {
          case DOUBTFUL_AGAIN ->
              "A second reading of the stored sample " + sample + ", which is in doubt";
          case PASTE_RERUN -> "Saturated paste of the stored sample " + sample;
          case NEW_SITE -> "A new site in field " + p.field() + ", by saturated paste";
          case SODIUM -> "SAR of the saturated paste of the stored sample " + sample;
          case CEC -> "CEC, or at least the texture, of the stored sample " + sample;
        },
        switch (p.kind()) {
          case DOUBTFUL_AGAIN -> "it is misread, or a spot of its own: the map cannot tell";
          case PASTE_RERUN -> "ties the cheaper readings to the paste";
          case NEW_SITE -> "the zones are known least where no site is near";
          case SODIUM -> "gypsum cannot be decided here: nothing is known of sodium";
          case CEC -> "sodium asks for gypsum, but no tonnes can be given without it";
        },
        p.field(),
        p.place(),
        p.kind(),
        100 * p.worth(),
        100 * p.ranchErrorAfter(),
        100 * p.worstZoneErrorAfter());
  }

  /** Mean half squared difference of ln ECe at a distance. */
  public record VariogramBin(double distanceM, double semivariance, int pairs) {}

  /** An interval made for a chance, and the share of sites that it held. */
  public record AccuracyPoint(double chance, double share) {}

  /**
   * A measurement not yet made.
   *
   * @param what e.g. {@code saturated paste of the stored sample N07}
   * @param why what it tells most about
   * @param place where, metres of the ranch's projection
   * @param worthPct share of what is not known that it settles; NaN for a reading in doubt
   * @param ranchErrorPct standard error of the ranch's mean ECe after it and those before, percent
   * @param worstZoneErrorPct the same of the zone known worst
   */
  public record NextMeasurement(
      String what,
      String why,
      String field,
      PlaceM place,
      Proposal.Kind kind,
      double worthPct,
      double ranchErrorPct,
      double worstZoneErrorPct) {}
}
