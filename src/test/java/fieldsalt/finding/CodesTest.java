package fieldsalt.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The catalogue of codes: each has one meaning, is raised, and stands in the documentation. */
class CodesTest {
  private static final String DOC = "docs/findings.md";

  /** The table of the documentation; {@code -Dwrite.docs=true} writes it anew. */
  private static String table() {
    StringBuilder table =
        new StringBuilder(
            """
            # Findings

            Every code under which something is found, on the page, on the terminal and in `run.json`.

            | code | what it means |
            | --- | --- |
            """);
    for (Code code : Code.values()) {
      table.append("| `" + code.id() + "` | " + code.meaning() + " |\n");
    }
    return table.toString();
  }

  @Test
  void theDocumentationHoldsTheCatalogue() throws IOException {
    if (Boolean.getBoolean("write.docs")) {
      Files.writeString(Path.of(DOC), table());
    }
    assertThat(Path.of(DOC)).hasContent(table());
  }

  @Test
  void eachHasASentenceOfItsOwnAndIsRaised() throws IOException {
    String sources;
    try (Stream<Path> files = Files.walk(Path.of("src/main/java/fieldsalt"))) {
      List<Path> java =
          files.filter(f -> f.toString().endsWith(".java") && !f.endsWith("Code.java")).toList();
      List<String> texts = new ArrayList<>();
      for (Path file : java) {
        texts.add(Files.readString(file));
      }
      sources = String.join("\n", texts);
    }
    assertThat(Code.values()).extracting(Code::meaning).doesNotHaveDuplicates();
    assertThat(Code.values()).allSatisfy(c -> assertThat(c.meaning()).endsWith("."));
    assertThat(
            Stream.of(Code.values())
                .filter(c -> !sources.matches("(?s).*\\bCode\\." + c.name() + "\\b.*"))
                .collect(Collectors.toList()))
        .as("codes that nothing raises")
        .isEmpty();
  }

  @Test
  void placesKnowTheirFields() {
    Place rows =
        new Place.Rows(
            "a.csv",
            "row",
            new java.util.TreeSet<>(List.of(2, 3, 7)),
            "S1",
            java.util.Set.of("north"));
    assertThat(PlaceWords.of(rows)).isEqualTo("a.csv rows 2-3, 7, site S1");
    assertThat(rows.concerns("north")).isTrue();
    assertThat(rows.concerns("south")).isFalse();
    Place laboratory = Place.laboratory("Valley", "1:5", List.of("north", "south"));
    assertThat(PlaceWords.of(laboratory)).isEqualTo("laboratory Valley, 1:5");
    assertThat(laboratory.concerns("south")).isTrue();
    assertThat(new Place.Ranch().concerns("any")).isTrue();
    assertThat(Place.file("a.csv").concerns("north")).isFalse();
    assertThat(new Place.Column("a.csv", "EC").isIn("a.csv")).isTrue();
  }
}
