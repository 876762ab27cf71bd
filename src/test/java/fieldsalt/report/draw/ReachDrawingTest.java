package fieldsalt.report.draw;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.quantity.UnitSystem;
import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.Markup;
import fieldsalt.surface.covariance.Anisotropy;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReachDrawingTest {
  private static String drawn(UnitSystem system, double azimuth, double ratio, boolean local) {
    Markup page = new Markup();
    ReachDrawing drawing =
        new ReachDrawing(
            page, new Figures(system, "ECe", "dS/m"), new Anisotropy(azimuth, ratio), 300, local);
    drawing.draw();
    return page + drawing.caption();
  }

  /** North is up and east is right: an azimuth of 90 degrees runs to the right. */
  @ParameterizedTest
  @CsvSource({
    "0, M220 270L220 46",
    "90, M108 158L332 158",
    "45, M140.8 237.2L299.2 78.8",
    "135, M140.8 78.8L299.2 237.2"
  })
  void theArrowRunsAlongTheAzimuth(double azimuth, String path) {
    assertThat(drawn(UnitSystem.METRIC, azimuth, 3, false))
        .contains("id=\"reach-along\" d=\"" + path + "\"");
  }

  @Test
  void theDrawingSaysDirectionRatioAndDistances() {
    assertThat(drawn(UnitSystem.METRIC, 60, 3, false))
        .contains(">N</text>", ">60°</text>", ">300\u00a0m</text>", ">100\u00a0m</text>")
        .contains("rx=\"37.3\"", "rotate(60 220 158)")
        .contains("along 60° (clockwise from north), 3.0 times as far as across");
    assertThat(drawn(UnitSystem.US, 60, 3, true)).contains(">980\u00a0ft</text>", ">y</text>");
  }
}
