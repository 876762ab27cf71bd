package fieldsalt.read.table;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.read.Ranch;
import fieldsalt.read.RanchReader;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.word.PlainText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Headers under lines of group names, as laboratories' spreadsheets have them. */
class GroupNamesTest {
  @TempDir Path temp;

  private List<String> read(String sheet) throws IOException {
    Path file = temp.resolve("sheet.csv");
    Files.writeString(file, sheet);
    Ranch ranch =
        RanchReader.readTable(JobDocument.ofSettings(Path.of(""), List.of()), List.of(file));
    return ranch.samples().stream()
        .map(
            s ->
                s.method().map(m -> m.label()).orElse("none")
                    + " "
                    + PlainText.number(s.ec().orElseThrow().dSPerM()))
        .toList();
  }

  @Test
  void theMethodStandsInTheLineAbove() throws IOException {
    assertThat(
            read(
                """
                Sample,,,Saturated paste,,1:5 extract,
                ID,Lon,Lat,EC dS/m,pH,EC uS/cm,Cl
                A,-150,30,4.2,7.5,600,3
                """))
        .containsExactlyInAnyOrder("paste 4.2", "1:5 0.6");
  }

  @Test
  void theMethodStandsTwoLinesAbove() throws IOException {
    assertThat(
            read(
                """
                Report of an invented laboratory
                Sample,,,Saturated paste,,1:5 extract,
                ,Place,,Salt,,Salt,
                ID,Lon,Lat,EC,pH,EC,Cl
                ,deg,deg,mS/cm,,uS/cm,
                A,-150,30,4.2,7.5,600,3
                """))
        .containsExactlyInAnyOrder("paste 4.2", "1:5 0.6");
  }

  /** A title is no group, and what a column says of itself stands. */
  @Test
  void titlesAndOwnWordsAreLeftAlone() throws IOException {
    assertThat(
            read(
                """
                Saturated paste and other tests
                ,,,Saturated paste,,,
                ID,Lon,Lat,EC 1:5 (dS/m),pH,Cl
                A,-150,30,0.6,7.5,3
                """))
        .containsExactly("1:5 0.6");
  }

  /** A group of the upper line ends the group below that began before it. */
  @Test
  void aGroupEndsWithTheOneAboveIt() throws IOException {
    assertThat(
            read(
                """
                Sample,,,Field,,Laboratory,
                ,,,1:5 extract,,,
                ID,Lon,Lat,EC (dS/m),pH,ECe (dS/m),Cl
                A,-150,30,0.6,7.5,4,3
                """))
        .containsExactlyInAnyOrder("1:5 0.6", "paste 4");
  }
}
