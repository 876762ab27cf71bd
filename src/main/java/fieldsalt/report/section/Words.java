package fieldsalt.report.section;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.markup.Figures;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.fit.SurfaceReport;
import fieldsalt.surface.fit.SurfaceReport.Candidate;
import java.util.Optional;

/** Figures of the validation in words that a grower understands. */
final class Words {
  private static final String BY_PLACE = "vary rates by place";

  private Words() {}

  /** As the other {@code trust}; zones that follow sodium alone are another matter. */
  static String trust(PageInput input) {
    String trust = trust(input.surface().report(), input.sites());
    return input.followsSodiumAlone()
        ? trust.replace(BY_PLACE, "vary leaching by place")
            + " Zones of one field follow sodium, of which the samples do show where it is."
        : trust;
  }

  /** How well the map predicts a place it has not seen, in one or two sentences. */
  static String trust(SurfaceReport report, SiteReadings readings) {
    Optional<Candidate> chosen = candidate(report, report.chosen());
    if (report.chosen() == SurfaceMethod.MEAN) {
      return (readings.property().equals(SiteReadings.ECE)
              ? "The samples show how much salt there is, not where it is"
              : "The samples show how much there is, not where")
          + ": no map of these samples"
          + " predicts a left-out sample better than its field's mean, so do not "
          + BY_PLACE
          + ".";
    }
    return chosen
        .map(c -> within(c, readings) + against(report, c))
        .orElse("The map was not tested.");
  }

  private static String within(Candidate c, SiteReadings readings) {
    String size =
        readings.scale() == Scale.LOG
            ? "a factor of " + Figures.twoFigures(Math.exp(c.rmse()))
            : (Figures.twoFigures(c.rmse()) + Figures.GAP + readings.unit()).strip();
    return "At a place it has not seen the map is typically right to within "
        + size
        + " (tested on "
        + Figures.count(c.sites(), "sample site")
        + ", each left out in turn)";
  }

  private static String against(SurfaceReport report, Candidate chosen) {
    return candidate(report, SurfaceMethod.MEAN)
        .filter(mean -> mean.rmse() > chosen.rmse())
        .map(
            mean ->
                ", an error "
                    + Figures.percent(1 - chosen.rmse() / mean.rmse())
                    + " smaller than that of the field's mean.")
        .orElse(".");
  }

  static Optional<Candidate> candidate(SurfaceReport report, SurfaceMethod method) {
    return report.candidates().stream().filter(c -> c.method() == method).findFirst();
  }

  /** What a method is called on the page. */
  static String method(SurfaceMethod method) {
    return switch (method) {
      case MEAN -> "each field's mean";
      case KRIGING -> "kriging";
      case DRIFT -> "kriging with the survey";
      case IDW -> "inverse distance";
      case AUTO -> throw new IllegalArgumentException("no map is made by it");
    };
  }

  static boolean isEnded(String text) {
    return text.isBlank() || ".!?".indexOf(text.charAt(text.length() - 1)) >= 0;
  }

  /** A text with one full stop behind it. */
  static String ended(String text) {
    return isEnded(text) ? text : text + ".";
  }
}
