package fieldsalt.report.section;

import fieldsalt.quantity.UnitSystem.Amount;
import fieldsalt.report.markup.Figures;
import fieldsalt.surface.covariance.Anisotropy;
import fieldsalt.surface.fit.SurfaceDetails;
import fieldsalt.surface.fit.SurfaceDetails.Influence;
import fieldsalt.surface.fit.SurfaceReport;
import fieldsalt.surface.fit.SurfaceReport.FittedVariogram;
import java.util.ArrayList;
import java.util.List;

/** What a geostatistician would remark on the fit, in plain sentences. */
final class Diagnosis {
  private static final double NO_PATTERN = 0.9;
  private final Figures figures;

  private Diagnosis(Figures figures) {
    this.figures = figures;
  }

  static List<String> of(SurfaceReport report, Figures figures) {
    Diagnosis diagnosis = new Diagnosis(figures);
    SurfaceDetails details = report.details();
    List<String> said = new ArrayList<>();
    diagnosis.addPattern(said, report.variogram());
    diagnosis.addDirection(said, details.anisotropy());
    details.drift().ifPresent(d -> said.add("Survey or raster: " + Words.ended(d.verdict())));
    details.influential().forEach(i -> said.add(diagnosis.influence(i)));
    return said;
  }

  private void addPattern(List<String> said, FittedVariogram v) {
    double sill = v.partialSill() + v.microScale();
    if (!v.isDefault() && sill > 0 && v.microScale() >= NO_PATTERN * sill) {
      said.add(
          "At the distances between these sites the samples show no pattern: neighbours differ as"
              + " much as far sites. Salt may still lie in patches that are smaller than the"
              + " spacing.");
    }
  }

  private void addDirection(List<String> said, Anisotropy a) {
    if (a.ratio() > 1) {
      said.add(
          "Salt reaches farther along "
              + Figures.decimals(a.azimuthDeg(), 0)
              + "° (clockwise from north) than across, "
              + Figures.twoFigures(a.ratio())
              + " times.");
    }
  }

  private String influence(Influence i) {
    return "The fit hangs on site "
        + i.siteId()
        + ": without it the sill would be "
        + Figures.decimals(i.sillWithout(), 2)
        + " instead of "
        + Figures.decimals(i.sill(), 2)
        + " and the distance parameter "
        + figures.amount(i.rangeWithoutM(), Amount.LENGTH)
        + " instead of "
        + figures.amount(i.rangeM(), Amount.LENGTH)
        + ". Have it checked.";
  }
}
