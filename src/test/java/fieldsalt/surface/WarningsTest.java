package fieldsalt.surface;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.surface.choice.SurfaceSettings;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.fit.SurfaceDetails;
import fieldsalt.surface.fit.Validation;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the surface says of a laboratory that does not fit in. */
class WarningsTest {
  private static Surface withPasteShiftedBy(double shift) {
    CovarianceModel model = new CovarianceModel(new Exponential(250), 0.2, 0.02);
    RanchCase ranch = RanchCase.simulated(new RanchCase.Plan(1, 50, 8, 800, model, 0.05, 20, 5), 2);
    List<SiteReadings.Row> rows = new ArrayList<>();
    for (SiteReadings.Row r : ranch.readings().rows()) {
      double value = r.paste() ? r.value() + shift : r.value();
      rows.add(
          new SiteReadings.Row(
              r.site(),
              value,
              r.ownVariance(),
              r.loadings(),
              r.paste(),
              r.method(),
              r.laboratory()));
    }
    return SurfaceFitter.fit(
        ranch.readings().withRows(rows), ranch.fields(), SurfaceSettings.defaults());
  }

  private static List<String> codes(Surface surface) {
    return surface.report().findings().stream().map(f -> f.code().id()).toList();
  }

  @Test
  void aLaboratoryThatDoesNotFitInIsNamed() {
    Surface shifted = withPasteShiftedBy(1.5);
    assertThat(codes(shifted)).contains("laboratory-apart");
    assertThat(shifted.report().details().laboratories())
        .extracting(SurfaceDetails.LaboratoryCheck::laboratory)
        .containsExactly("A", "B");
    assertThat(shifted.report().details().laboratories().get(0).bias()).isGreaterThan(0.5);
    assertThat(codes(withPasteShiftedBy(0))).doesNotContain("laboratory-apart");
  }

  @Test
  void validationIsGivenOnBothScales() {
    List<Validation> figures = withPasteShiftedBy(0).report().details().validation();
    assertThat(figures).extracting(Validation::unit).containsExactly("ln", "dS/m");
    for (Validation v : figures) {
      assertThat(v.count()).isEqualTo(50);
      assertThat(v.coverage()).hasSize(19);
      assertThat(v.goodness()).isBetween(0.6, 1.0);
      assertThat(v.skill()).isGreaterThan(0);
    }
  }
}
