package fieldsalt.read;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.read.file.SourceRow;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.Sample;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** One table written in every way that spreadsheets write it reads the same. */
class SameTableTest {
  private static final List<List<String>> TABLE =
      List.of(
          List.of(
              "id", "lon", "lat", "Depth", "EC 1:5 (\u00b5S/cm)", "ECe (dS/m)", "Texture", "Date"),
          List.of(
              "Ñandú 2",
              "-153.0101",
              "30.0011",
              "0-30 cm",
              "1613.5",
              "12.25",
              "clay loam",
              "2026-03-10"),
          List.of("B", "-153.0092", "30.0021", "30-60 cm", "<10", "", "loam", "2026-03-11"),
          List.of("C", "-153.0083", "30.0031", "0-30 cm", "ND", ">20.5", "SiCL", "2026-03-12"),
          List.of("D", "-153.0074", "30.0041", "0-30 cm", "412.25", "3.75", "", ""));

  @TempDir Path folder;

  private record Way(
      String separator,
      boolean comma,
      boolean quoted,
      String lineEnd,
      String charset,
      String mark) {
    String text() {
      StringBuilder out = new StringBuilder(mark);
      for (List<String> row : TABLE) {
        out.append(String.join(separator, row.stream().map(this::cell).toList())).append(lineEnd);
      }
      return out.toString();
    }

    private String cell(String cell) {
      String text = comma && cell.matches("[<>]?-?\\d+\\.\\d+") ? cell.replace('.', ',') : cell;
      boolean must = quoted || text.contains(separator);
      return must ? "\"" + text + "\"" : text;
    }
  }

  static Stream<Way> ways() {
    List<Way> ways = new ArrayList<>();
    for (String separator : List.of(",", ";", "\t", "|")) {
      for (boolean comma : List.of(false, true)) {
        for (boolean quoted : List.of(false, true)) {
          ways.add(new Way(separator, comma, quoted, "\r\n", "UTF-8", ""));
        }
      }
    }
    for (String lineEnd : List.of("\n", "\r", "\r\n\r\n")) {
      ways.add(new Way(";", true, false, lineEnd, "UTF-8", "\ufeff"));
    }
    ways.add(new Way(",", false, false, "\n", "windows-1252", ""));
    ways.add(new Way(",", false, false, "\n", "ISO-8859-1", ""));
    for (String mark : List.of("", "\ufeff")) {
      ways.add(new Way("\t", true, false, "\r\n", "UTF-16LE", mark));
      ways.add(new Way("\t", true, false, "\r\n", "UTF-16BE", mark));
    }
    ways.add(new Way(";", true, false, "\n", "UTF-8", "sep=;\n"));
    return ways.stream();
  }

  private List<Sample> read(String text, String charset) throws IOException {
    Path file = Files.write(folder.resolve("t.csv"), text.getBytes(Charset.forName(charset)));
    return RanchReader.readTable(JobDocument.ofSettings(folder, List.of()), List.of(file))
        .samples()
        .stream()
        .map(s -> s.withSource(new SourceRow("", 0)))
        .toList();
  }

  @ParameterizedTest
  @MethodSource("ways")
  void everyWayOfWritingReadsTheSame(Way way) throws IOException {
    List<Sample> expected = read(new Way(",", false, false, "\n", "UTF-8", "").text(), "UTF-8");
    assertThat(expected).hasSize(6);
    assertThat(expected.get(0).id()).isEqualTo("Ñandú 2");
    assertThat(expected.get(0).ec().orElseThrow().dSPerM()).isEqualTo(1.6135);
    assertThat(read(way.text(), way.charset())).isEqualTo(expected);
  }

  @Test
  void theOrderOfRowsNeverMatters() throws IOException {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      lines.add(
          "S"
              + i % 20
              + ","
              + (i % 3 + 1) * 10
              + ",1:"
              + (i % 2 == 0 ? 5 : 1)
              + ","
              + (0.3 + 0.01 * i)
              + ",dS/m,0"
              + (i % 9 + 1)
              + "/"
              + (10 + i % 19)
              + "/2026");
    }
    String header = "id,depth (cm),method,ec,unit,date\n";
    List<Sample> before = sorted(read(header + String.join("\n", lines), "UTF-8"));
    Random random = new Random(5);
    for (int i = 0; i < 10; i++) {
      Collections.shuffle(lines, random);
      assertThat(sorted(read(header + String.join("\n", lines), "UTF-8"))).isEqualTo(before);
    }
  }

  private static List<Sample> sorted(List<Sample> samples) {
    return samples.stream().sorted(java.util.Comparator.comparing(Sample::toString)).toList();
  }
}
