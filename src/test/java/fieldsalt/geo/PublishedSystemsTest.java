package fieldsalt.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.finding.InputProblem;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Places in systems of the EPSG registry, over its projections and datums: survey.txt has one place
 * in each of some 270 systems with its coordinates by PROJ 9.1.1 (its head says how).
 */
class PublishedSystemsTest {
  private record Line(String code, double lon, double lat, double x, double y, String text) {
    static Line of(String line) {
      String[] words = line.split(";", 7);
      return new Line(
          words[0],
          number(words[1]),
          number(words[2]),
          number(words[3]),
          number(words[4]),
          words[6]);
    }

    private static double number(String word) {
      return Double.parseDouble(word);
    }

    double offM(SourceSystem system) {
      double[] lonLat = system.toLonLat(x, y);
      double east = 111_320 * Math.cos(Math.toRadians(lat)) * (lonLat[0] - lon);
      return Math.hypot(east, 110_600 * (lonLat[1] - lat));
    }
  }

  private static List<Line> survey() throws IOException {
    try (InputStream in = PublishedSystemsTest.class.getResourceAsStream("survey.txt")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(Line::of)
          .toList();
    }
  }

  /**
   * Within a metre of PROJ by either route, and the routes within 5 cm of one another (the oblique
   * projection of the Swiss systems is off by 4 cm by code).
   */
  @Test
  void aCodeAndThePrjTextLeadToThePlaceThatProjHas() throws IOException {
    List<Line> lines = survey();
    assertThat(lines).hasSizeGreaterThan(250);
    for (Line line : lines) {
      SourceSystem byCode = Projections.source("EPSG:" + line.code());
      SourceSystem byText = Projections.source(line.text());
      assertThat(line.offM(byCode)).as("EPSG:" + line.code()).isLessThan(1);
      assertThat(line.offM(byText)).as("text of " + line.code()).isLessThan(1);
      assertThat(line.offM(byText))
          .as("routes of " + line.code())
          .isCloseTo(line.offM(byCode), within(0.05));
      assertThat(byText.tieAt(line.lon(), line.lat()))
          .as("tie of " + line.code())
          .isEqualTo(byCode.tieAt(line.lon(), line.lat()));
    }
  }

  /** What no published shift ties or no projection here computes is refused, not guessed. */
  @ParameterizedTest
  @CsvSource({
    "3139, a projection: Hyperbolic Cassini-Soldner",
    "3993, a projection: Guam",
    "2218, a projection: Lambert conic west orientated",
    "27704, a projection: azimuthal equidistant",
    "29701, a projection: Laborde",
    "6247, a projection: Colombia urban",
    "6933, a projection: equal-area cylinder",
    "8857, a projection: Equal Earth",
    "2327, Xian 1980",
    "4555, New Beijing",
    "4608, NAD27(76): by grid only"
  })
  void whatCannotBeTiedIsRefused(String code, String why) {
    assertThatThrownBy(() -> Projections.source("EPSG:" + code))
        .as(why)
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("EPSG:4326");
  }

  /**
   * BD72 / Belge Lambert 72: PROJ leaves the turn of the grid out and is 746 m off. Expected: IOGP
   * Guidance Note 7-2, example of method 9803.
   */
  @Test
  void belgeLambert72IsTurned() throws Exception {
    SourceSystem belge = Projections.source("EPSG:31300");
    double[] wgs84 = belge.toLonLat(251763.20, 153034.13);
    SourceSystem degrees = Projections.source("EPSG:4313");
    double[] expected =
        degrees.toLonLat(5 + 48 / 60.0 + 26.533 / 3600, 50 + 40 / 60.0 + 46.461 / 3600);
    assertThat(wgs84[0]).isCloseTo(expected[0], within(1.5e-7));
    assertThat(wgs84[1]).isCloseTo(expected[1], within(1e-7));
  }
}
