package fieldsalt.surface.choice;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.surface.fit.Doubts;
import fieldsalt.surface.fit.Mixture;
import fieldsalt.surface.fit.SurfaceDetails;
import fieldsalt.surface.site.Observations;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;

/** Sites in doubt for people: in the property's unit, with both explanations. */
public final class DoubtfulSites {
  private DoubtfulSites() {}

  static SurfaceDetails.Doubtful of(SiteReadings readings, Observations data, Doubts.Site doubt) {
    DoubleUnaryOperator back = z -> readings.scale() == Scale.LOG ? Math.exp(z) : z;
    SiteReadings.Site site = data.parts().get(doubt.part()).sites().get(doubt.site());
    Mixture others = doubt.left().predicted();
    return new SurfaceDetails.Doubtful(
        site.id(),
        site.field(),
        site.place(),
        back.applyAsDouble(doubt.left().value()),
        back.applyAsDouble(others.quantile(0.05)),
        back.applyAsDouble(others.quantile(0.5)),
        back.applyAsDouble(others.quantile(0.95)),
        doubt.chance(),
        doubt.supported());
  }

  /** What a person must know of one. */
  public static Finding finding(SurfaceDetails.Doubtful d, String property, String unit) {
    String found =
        String.format(
            Locale.ROOT,
            "reads %s of %.3g %s; its neighbours suggest %.3g (90 %%: %.2g to %.2g)",
            property,
            d.value(),
            unit,
            d.suggested(),
            d.low(),
            d.high());
    return new Finding(
        Code.DOUBTFUL_READING,
        new Place.Site(d.siteId(), d.field(), false),
        found,
        d.supported()
            ? "a neighbouring site is as far off in the same direction: they support each other and"
                + " count whole"
            : "either the reading is wrong (unit, decimal, label) or there is a small spot of its"
                + " own: the map cannot tell, and it counts half; run the stored sample again, and"
                + " if it repeats, sample 20 to 30 m around it; once you know, end the doubt in the job: confirm: {\""
                + d.siteId()
                + "\": dS/m} if it is right, leave-out: [\""
                + d.siteId()
                + "\"] if it is wrong");
  }
}
