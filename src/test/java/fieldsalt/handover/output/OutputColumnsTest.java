package fieldsalt.handover.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fieldsalt.quantity.UnitSystem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The catalogue of columns: complete, of one mind with the documentation, and the only way in. */
class OutputColumnsTest {
  private static final Path DOC = Path.of("docs/files.md");
  private static final String BEGIN = "<!-- columns: written from the catalogue -->";
  private static final String END = "<!-- end of columns -->";

  private static String tables() {
    StringBuilder text = new StringBuilder(BEGIN + "\n\n");
    for (OutputColumns file : OutputColumns.all()) {
      text.append("**" + file.file() + "**\n\n");
      text.append("| column | type | unit | interval | what |\n| --- | --- | --- | --- | --- |\n");
      for (OutputColumns.Column c : file.columns()) {
        String us = c.name().equals(c.usName()) ? "" : ", in US units `" + c.usName() + "`";
        text.append(
            String.format(
                "| `%s`%s | %s | %s | %s | %s |%n",
                c.name(), us, c.type(), c.unit().replace("|", " or "), c.level(), c.meaning()));
      }
      text.append('\n');
    }
    return text.append(END).toString();
  }

  /** {@code -Dwrite.docs=true} writes the tables anew. */
  @Test
  void theDocumentationHoldsTheCatalogue() throws IOException {
    String doc = Files.readString(DOC);
    int from = doc.indexOf(BEGIN);
    int to = doc.indexOf(END) + END.length();
    if (Boolean.getBoolean("write.docs")) {
      Files.writeString(DOC, doc.substring(0, from) + tables() + doc.substring(to));
    }
    assertThat(Files.readString(DOC)).contains(tables());
  }

  @Test
  void everyColumnSaysWhatItIsAndBoundsSayTheirLevel() {
    for (OutputColumns file : OutputColumns.all()) {
      assertThat(file.names(UnitSystem.METRIC)).as(file.file()).doesNotHaveDuplicates();
      for (OutputColumns.Column c : file.columns()) {
        assertThat(c.meaning()).as(file.file() + " " + c.name()).isNotBlank();
        assertThat(c.type()).isIn("text", "number", "whole number", "truth", "yes or no");
        boolean bound = c.name().matches(".*_(low|high|p10|p90)");
        assertThat(c.level()).as(c.name()).matches(bound ? "90 %|10-90 %" : "");
      }
    }
  }

  @Test
  void whatIsNotInTheCatalogueCannotBeWritten() {
    OutputColumns zones = OutputColumns.of("zones.geojson");
    assertThat(zones.figures("ece_low", 1.5, "draft", true))
        .containsExactly(
            java.util.Map.entry("ece_low", 1.5), java.util.Map.entry("draft", (Object) true));
    assertThatThrownBy(() -> zones.figures("ece_mean", 1.5))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("ece_mean");
    assertThatThrownBy(() -> OutputColumns.of("other.csv"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(OutputColumns.all())
        .extracting(OutputColumns::file)
        .containsAll(List.of("zones.geojson", "samples.geojson", "rates.csv", "crops.csv"));
  }
}
