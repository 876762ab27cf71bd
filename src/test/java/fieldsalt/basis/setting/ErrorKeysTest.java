package fieldsalt.basis.setting;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.read.job.JobDocument;
import fieldsalt.read.job.JobKeys;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class ErrorKeysTest {
  private static BasisSettings settings(String... sets) {
    return BasisKeys.of(JobDocument.ofSettings(Path.of(""), List.of(sets)));
  }

  @Test
  void theCatalogueShowsTheDefaultsOfTheStage() {
    assertThat(settings()).isEqualTo(BasisSettings.defaults());
  }

  /** Each key moves one size and nothing else. */
  @Test
  void everySizeOfAnErrorIsAKey() {
    List<String> keys =
        JobKeys.all().stream()
            .filter(k -> k.path().get(0).equals("errors"))
            .map(k -> String.join(".", k.path()))
            .toList();
    assertThat(keys).hasSize(25);
    List<BasisSettings> moved = keys.stream().map(k -> settings(k + "=0.123")).toList();
    assertThat(moved).doesNotHaveDuplicates().doesNotContain(BasisSettings.defaults());
    assertThat(settings("errors.1-5-own=0.2").laboratoryErrors().oneToFive())
        .isEqualTo(new ReadingError(0.07, 0.2));
    assertThat(settings("errors.shared-share=0.5").conversionErrors().sharedShare()).isEqualTo(0.5);
    assertThat(settings("errors.uncompensated=0.3").specialSoils().uncompensated()).isEqualTo(0.3);
  }
}
