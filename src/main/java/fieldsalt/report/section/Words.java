package fieldsalt.report.section;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.markup.Figures;
import fieldsalt.surface.fit.Accuracy;
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
    if (report.isFlat()) {
      return (readings.property().equals(SiteReadings.ECE)
              ? "The samples show how much salt there is, not where it is"
              : "The samples show how much there is, not where")
          + ": no map of these samples"
          + " predicts a left-out sample better than its field's mean, so do not "
          + BY_PLACE
          + ".";
    }
    return report
        .accuracy()
        .map(a -> within(a, readings) + without(report, readings))
        .orElse("The map was not tested.");
  }

  private static String within(Accuracy a, SiteReadings readings) {
    return "At a place it has not seen the map is typically right to within "
        + size(a, readings)
        + " and explains "
        + explained(a)
        + " of how such places differ from their field's mean (tested on "
        + Figures.count(a.sites(), "sample site")
        + ", each left out in turn).";
  }

  private static String without(SurfaceReport report, SiteReadings readings) {
    return report
        .accuracyWithoutDoubtful()
        .map(
            a ->
                " Without the doubtful readings it is "
                    + size(a, readings)
                    + " and "
                    + explained(a)
                    + ".")
        .orElse("");
  }

  private static String size(Accuracy a, SiteReadings readings) {
    return readings.scale() == Scale.LOG
        ? "a factor of " + Figures.twoFigures(a.typicalFactor())
        : (Figures.twoFigures(a.rmse()) + Figures.GAP + readings.unit()).strip();
  }

  private static String explained(Accuracy a) {
    return Figures.percent(Math.max(0, a.explained()));
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
