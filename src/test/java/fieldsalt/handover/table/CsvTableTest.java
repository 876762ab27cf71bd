package fieldsalt.handover.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CsvTableTest {
  @TempDir Path dir;

  /** RFC 4180 section 2, rules 5 to 7. */
  @Test
  void whatNeedsQuotesHasThem() throws IOException {
    CsvTable table =
        new CsvTable(
            List.of("zone", "rate_t_ha", "ok"),
            List.of(
                Arrays.asList("Ñandú 2", 7.35, true),
                Arrays.asList("a, \"b\"\nc", null, Double.NaN),
                Arrays.asList("\uD83C\uDF3E", 1e-9, 12L)));
    table.write(dir.resolve("t.csv"));
    assertThat(dir.resolve("t.csv"))
        .content()
        .isEqualTo(
            "zone,rate_t_ha,ok\nÑandú 2,7.35,true\n\"a, \"\"b\"\"\nc\",,\n\uD83C\uDF3E,0,12\n");
  }

  /** What a spreadsheet would run stays text, what is a number stays a number. */
  @Test
  void noCellIsAFormula() {
    CsvTable table =
        new CsvTable(
            List.of("id"),
            List.of(
                List.of("=HYPERLINK(\"x\")"),
                List.of("+1+cmd"),
                List.of("@SUM(A1)"),
                List.of("-2+3"),
                List.of("\tA"),
                List.of("-1.50"),
                List.of(-2.5),
                List.of("N07")));
    assertThat(table.text().lines())
        .containsExactly(
            "id",
            "\"'=HYPERLINK(\"\"x\"\")\"",
            "'+1+cmd",
            "'@SUM(A1)",
            "'-2+3",
            "'\tA",
            "-1.50",
            "-2.5",
            "N07");
  }

  @Test
  void aRowOfAnotherLengthIsRefused() {
    assertThatThrownBy(() -> new CsvTable(List.of("a", "b"), List.of(List.of(1))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("1 cells under 2 names");
  }
}
