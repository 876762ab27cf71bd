package fieldsalt.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fieldsalt.finding.InputProblem;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.Sample;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The same trouble in every row of a file: one short way out. */
class WholeColumnsTest {
  @TempDir Path temp;

  private Ranch read(String header, String... rows) throws IOException {
    Path file = temp.resolve("sheet.csv");
    Files.writeString(file, header + "\n" + String.join("\n", rows) + "\n");
    return RanchReader.readTable(JobDocument.ofSettings(Path.of(""), List.of()), List.of(file));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "4569,dS/m;defaults: {unit: ...}",
        "4569,;defaults: {unit: ...}",
        "4.5,kg/m3;into the unit column of the file",
        "pending,dS/m;Correct the rows named",
      })
  void theRemedyIsTheShortest(String reading, String remedy) {
    String row = ",-150,30,0-30 cm,paste," + reading;
    assertThatThrownBy(
            () -> read("id,lon,lat,depth,method,ec,unit", "A" + row, "B" + row, "C" + row))
        .isInstanceOfSatisfying(
            InputProblem.class, e -> assertThat(e.problems().get(0).remedy()).contains(remedy));
  }

  @Test
  void methodsThatCannotBeUsedAndAHeaderAlone() {
    assertThatThrownBy(
            () -> read("id,lon,lat,depth,method,ec,unit", "A,-150,30,0-30 cm,ICP,4,dS/m"))
        .hasMessageContaining("correct the methods in the file");
    assertThatThrownBy(() -> read("id,lon,lat,depth,method,ec,unit"))
        .hasMessageContaining("Export the table again");
  }

  @Test
  void clayInFractionsIsLeftOut() throws IOException {
    String header = "id,lon,lat,depth,method,ec,unit,clay_pct";
    String row = ",-150,30,0-30 cm,1:5,0.6,dS/m,";
    Ranch ranch = read(header, "A" + row + "0.25", "B" + row + "0.3", "C" + row + "0.41");
    assertThat(ranch.findings()).extracting(f -> f.code().id()).contains("clay-fraction");
    assertThat(ranch.samples()).allMatch(s -> s.soil().clayPct().isEmpty());
    Ranch sand = read(header, "A" + row + "0.8", "B" + row + "3", "C" + row + "1");
    assertThat(sand.findings()).extracting(f -> f.code().id()).doesNotContain("clay-fraction");
    Ranch signs = read(header, "A" + row + "0.8%", "B" + row + "0.9%", "C" + row + "1 %");
    assertThat(signs.samples()).allMatch(s -> s.soil().clayPct().isPresent());
  }

  @Test
  void openDatesAreOneFinding() throws IOException {
    String header = "id,lon,lat,depth,method,ec,unit,date";
    String row = ",-150,30,0-30 cm,paste,6,dS/m,";
    assertThat(read(header, "A" + row + "03/04/2025", "B" + row + "05/04/2025").findings())
        .filteredOn(f -> f.code().id().equals("date-open"))
        .singleElement()
        .satisfies(f -> assertThat(f.where()).contains("rows 2-3"));
  }

  /** Ids with a bar in a file of commas. */
  @Test
  void aBarInTextDoesNotDivide() throws IOException {
    Ranch ranch =
        read(
            "id,lon,lat,depth,method,ec,unit",
            "A|1,-150,30,0-30 cm,paste,6,dS/m",
            "A|2,-150,30,0-30 cm,paste,6,dS/m");
    assertThat(ranch.samples()).extracting(Sample::id).containsExactly("A|1", "A|2");
  }
}
