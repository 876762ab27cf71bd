package fieldsalt.classes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.facts.Crop;
import fieldsalt.facts.Crops;
import fieldsalt.finding.InputProblem;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClassSchemesTest {
  private static Optional<Crop> crop(String name) {
    return Optional.of(Crops.standard().find(name).crop());
  }

  @Test
  void alfalfaAtTheFiveYieldSteps() {
    ClassSchemes.Made made = ClassSchemes.forCrop("north", crop("alfalfa"), 0.1, false);
    double[] steps = {2, 2 + 10 / 7.3, 2 + 25 / 7.3, 2 + 50 / 7.3, 2 + 100 / 7.3};
    assertThat(made.scheme().breaks()).hasSize(5);
    for (int k = 0; k < 5; k++) {
      assertThat(made.scheme().breaks().get(k)).isCloseTo(steps[k], within(1e-12));
    }
    assertThat(made.scheme().labels())
        .containsExactly(
            "full yield",
            "90-100 % yield",
            "75-90 % yield",
            "50-75 % yield",
            "0-50 % yield",
            "no yield");
    assertThat(made.scheme().limitDsPerM()).isEqualTo(2);
    assertThat(made.findings()).isEmpty();
  }

  /** Soybean falls from full yield to 75 % within 1.25 dS/m: narrower than a conversion's error. */
  @Test
  void stepsCloserThanTheErrorAreMergedAndSaid() {
    ClassSchemes.Made made = ClassSchemes.forCrop("north", crop("soybean"), 0.25, false);
    assertThat(made.scheme().breaks()).containsExactly(5.0, 7.5, 10.0);
    assertThat(made.scheme().labels())
        .containsExactly("full yield", "50-100 % yield", "0-50 % yield", "no yield");
    assertThat(made.findings()).extracting(f -> f.code().id()).containsExactly("breaks-merged");
    assertThat(made.findings().get(0).found()).contains("90 % (5.5 dS/m)", "75 % (6.25 dS/m)");
    assertThat(made.scheme().limitDsPerM()).isEqualTo(5);
  }

  /** USDA NRCS, Soil Survey Manual: "2 to less than 4" is very slightly saline. */
  @ParameterizedTest
  @CsvSource({
    "1.99, nonsaline",
    "3.99, very slightly saline",
    "4.0, slightly saline",
    "8, moderately saline",
    "16.0, strongly saline"
  })
  void nrcsClasses(double ece, String label) {
    ClassScheme nrcs = ClassSchemes.nrcs();
    assertThat(nrcs.labels().get(nrcs.classOf(ece))).isEqualTo(label);
    assertThat(nrcs.limitDsPerM()).isEqualTo(4);
    assertThat(nrcs.name()).contains("NRCS");
  }

  @ParameterizedTest
  @CsvSource({"safflower, moderately tolerant", "Oat (grain), tolerant", "watermelon, estimate"})
  void ratingOnlyCropsGetNrcsClassesAndTheRating(String name, String word) {
    ClassSchemes.Made made = ClassSchemes.forCrop("north", crop(name), 0.1, false);
    assertThat(made.scheme().breaks()).containsExactly(2.0, 4.0, 8.0, 16.0);
    assertThat(made.scheme().name()).contains(word);
    assertThat(made.findings()).extracting(f -> f.code().id()).containsExactly("rating-only");
  }

  @Test
  void gypsumInTheRootZoneRaisesEveryBreakByTwo() {
    ClassScheme plain = ClassSchemes.forCrop("n", crop("wheat"), 0, false).scheme();
    ClassScheme gypsum = ClassSchemes.forCrop("n", crop("wheat"), 0, true).scheme();
    for (int k = 0; k < plain.breaks().size(); k++) {
      assertThat(gypsum.breaks().get(k)).isCloseTo(plain.breaks().get(k) + 2, within(1e-12));
    }
    assertThat(gypsum.limitDsPerM()).isEqualTo(8);
    assertThat(gypsum.name()).contains("gypsum");
  }

  @Test
  void ownBreaks() {
    ClassScheme own = ClassSchemes.ofBreaks(List.of(1.5, 3.0, 6.25), 3);
    assertThat(own.labels())
        .containsExactly(
            "below 1.5 dS/m", "1.5 to 3 dS/m", "3 to 6.25 dS/m", "6.25 dS/m and above");
    assertThat(own.limitDsPerM()).isEqualTo(3);
    for (List<Double> bad :
        List.of(List.<Double>of(), List.of(4.0, 2.0), List.of(0.0, 2.0), List.of(2.0, 2.0))) {
      assertThatThrownBy(() -> ClassSchemes.ofBreaks(bad, 4)).isInstanceOf(InputProblem.class);
    }
  }

  @Test
  void withoutACropNrcs() {
    assertThat(ClassSchemes.forCrop("n", Optional.empty(), 0.2, false).scheme())
        .isEqualTo(ClassSchemes.nrcs());
  }
}
