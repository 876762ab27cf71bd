package fieldsalt.read;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.read.field.FieldBoundary;
import fieldsalt.read.job.JobDocument;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class RanchReaderTest {
  @Test
  void theInventedRanchIsReadWithEachBlemishFound() {
    Ranch ranch =
        RanchReader.read(JobDocument.read(Path.of("sample-fields/ranch/job.yaml"), List.of()));
    assertThat(ranch.findings())
        .extracting(f -> f.code().id())
        .containsExactlyInAnyOrder(
            "no-reading", "unit-missing", "unit-slip", "duplicate-row", "near-field");
    assertThat(ranch.findings())
        .filteredOn(f -> f.code().id().equals("unit-slip"))
        .singleElement()
        .satisfies(f -> assertThat(f.found()).contains("4000 dS/m", "4000 \u00b5S/cm (= 4 dS/m)"))
        .satisfies(f -> assertThat(f.done()).contains("confirm:"));
    assertThat(ranch.fields())
        .extracting(FieldBoundary::name)
        .containsExactly("north", "creek", "garden");
    assertThat(ranch.survey()).hasSize(6409);
    assertThat(ranch.projection().name()).contains("UTM zone 5N");
    assertThat(ranch.hashes().keySet())
        .containsExactly("fields.geojson", "job.yaml", "samples.csv", "survey.csv");
  }

  @Test
  void aSuspectedUnitIsUsedOnceTheUserConfirmsIt() {
    JobDocument job = JobDocument.read(Path.of("sample-fields/ranch/job.yaml"), List.of());
    Ranch ranch = RanchReader.read(job.withSets(List.of("confirm.234=uS/cm")));
    assertThat(ranch.findings()).extracting(f -> f.code().id()).doesNotContain("unit-slip");
    assertThat(ranch.samples())
        .filteredOn(s -> s.source().row() == 234)
        .singleElement()
        .satisfies(s -> assertThat(s.ec().orElseThrow().dSPerM()).isEqualTo(4));
  }

  @Test
  void theLeastThatIsNeededIsReadWithoutAFinding() {
    Ranch ranch =
        RanchReader.read(JobDocument.read(Path.of("sample-fields/small/job.yaml"), List.of()));
    assertThat(ranch.findings()).isEmpty();
    assertThat(ranch.samples()).hasSize(18);
    assertThat(ranch.samples().get(0).depth().bottomCm()).isEqualTo(100);
  }

  @Test
  void theSamplesOfAFieldComeInTheOrderOfTheirRows() {
    Ranch ranch =
        RanchReader.read(JobDocument.read(Path.of("sample-fields/ranch/job.yaml"), List.of()));
    for (String field : List.of("north", "creek", "garden", "no such field")) {
      assertThat(ranch.samplesOf(field))
          .isEqualTo(ranch.samples().stream().filter(s -> s.field().equals(field)).toList());
    }
    assertThat(ranch.samplesOf("garden")).hasSizeGreaterThan(5);
    assertThat(ranch.samplesByField()).containsOnlyKeys("north", "creek", "garden");
  }
}
