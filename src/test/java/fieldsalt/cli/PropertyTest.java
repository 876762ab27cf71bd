package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Another property than ECe through the same stages. */
class PropertyTest {
  @TempDir Path temp;

  @Test
  void exchangeCapacityIsMappedInItsOwnUnitsAndClasses() {
    Path out = temp.resolve("cec");
    Run run =
        Run.of(
            "map",
            "sample-fields/ranch/job.yaml",
            "-o",
            out,
            "--set",
            "property.column=cec_cmol_kg",
            "--set",
            "property.unit=cmolc/kg",
            "--set",
            "property.scale=natural",
            "--set",
            "zones.sodicity=yes",
            "--quiet");
    assertThat(run.code()).as(run.err()).isIn(Exit.DONE, Exit.SOME_FIELDS);
    assertThat(run.out()).contains("cmolc/kg").doesNotContain("saline").doesNotContain("yield");
    assertThat(out.resolve("zones.geojson")).content().contains("\"value\"").doesNotContain("ece_");
    assertThat(out.resolve("report.html")).content().contains("cmolc/kg");
    assertThat(out.resolve("run.json")).content().contains("sodicity-ignored");
  }

  /** The natural scale is for other columns: for ECe it is refused, not ignored. */
  @Test
  void theNaturalScaleIsRefusedForEce() {
    Run run =
        Run.of(
            "map",
            "sample-fields/small/job.yaml",
            "-o",
            temp.resolve("none"),
            "--set",
            "property.scale=natural");
    assertThat(run.code()).isEqualTo(Exit.INPUT);
    assertThat(run.err()).contains("property.scale", "natural, for a map of ECe");
    assertThat(temp.resolve("none")).doesNotExist();
  }
}
