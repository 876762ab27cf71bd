package fieldsalt.read;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.Soil;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Workbooks as people keep them: a cover before the table, cells shown as percent. */
class WorkbookTest {
  private static final String HEAD = "id,lon,lat,depth,method,ec,unit,clay_pct,gypsum_pct";
  private static final String ROW = "A,-150,30,0-30 cm,1:5,0.6,dS/m,0.31%,0.02%";

  private static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  private static final String RELATIONS =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  private static final String PACKAGE =
      "http://schemas.openxmlformats.org/package/2006/relationships";
  private static final String TYPES =
      "http://schemas.openxmlformats.org/package/2006/content-types";

  @TempDir Path temp;

  private Ranch read(String... sheets) throws IOException {
    Path file = temp.resolve("book.xlsx");
    write(file, List.of(sheets));
    return RanchReader.readTable(JobDocument.ofSettings(Path.of(""), List.of()), List.of(file));
  }

  /** Lines of cells with commas; a number before a percent sign is a cell shown as percent. */
  private static void write(Path file, List<String> sheets) throws IOException {
    Map<String, String> parts = new LinkedHashMap<>();
    StringBuilder types = new StringBuilder();
    StringBuilder names = new StringBuilder();
    StringBuilder links = new StringBuilder();
    String kind = "application/vnd.openxmlformats-officedocument.spreadsheetml.";
    types.append(type("workbook", kind + "sheet.main")).append(type("styles", kind + "styles"));
    for (int i = 1; i <= sheets.size(); i++) {
      parts.put("xl/worksheets/sheet" + i + ".xml", sheet(sheets.get(i - 1)));
      types.append(type("worksheets/sheet" + i, kind + "worksheet"));
      names.append("<sheet name='S%1$d' sheetId='%1$d' r:id='rId%1$d'/>".formatted(i));
      links.append(
          "<Relationship Id='rId%1$d' Type='%2$s/worksheet' Target='worksheets/sheet%1$d.xml'/>"
              .formatted(i, RELATIONS));
    }
    parts.put("[Content_Types].xml", "<Types xmlns='" + TYPES + "'>" + types + "</Types>");
    parts.put(
        "xl/workbook.xml",
        "<workbook xmlns='%s' xmlns:r='%s'><sheets>%s</sheets></workbook>"
            .formatted(MAIN, RELATIONS, names));
    parts.put(
        "xl/_rels/workbook.xml.rels",
        "<Relationships xmlns='%s'>%s<Relationship Id='s' Type='%s/styles' Target='styles.xml'/></Relationships>"
            .formatted(PACKAGE, links, RELATIONS));
    parts.put(
        "xl/styles.xml",
        "<styleSheet xmlns='%s'><cellXfs><xf numFmtId='0'/><xf numFmtId='9'/></cellXfs></styleSheet>"
            .formatted(MAIN));
    try (OutputStream out = Files.newOutputStream(file);
        ZipOutputStream zip = new ZipOutputStream(out)) {
      for (Map.Entry<String, String> part : parts.entrySet()) {
        zip.putNextEntry(new ZipEntry(part.getKey()));
        zip.write(part.getValue().getBytes(StandardCharsets.UTF_8));
      }
    }
  }

  private static String type(String part, String kind) {
    return "<Override PartName='/xl/%s.xml' ContentType='%s+xml'/>".formatted(part, kind);
  }

  private static String sheet(String lines) {
    StringBuilder xml = new StringBuilder("<worksheet xmlns='" + MAIN + "'><sheetData>");
    int row = 0;
    for (String line : lines.lines().toList()) {
      xml.append("<row r='").append(++row).append("'>");
      char column = 'A';
      for (String cell : line.split(",", -1)) {
        String at = column++ + String.valueOf(row);
        xml.append(
            cell.equals("=")
                ? "<c r='" + at + "'><f>1+1</f><v></v></c>"
                : cell.endsWith("%")
                    ? "<c r='" + at + "' s='1'><v>" + cell.replace("%", "") + "</v></c>"
                    : "<c r='" + at + "' t='inlineStr'><is><t>" + cell + "</t></is></c>");
      }
      xml.append("</row>");
    }
    return xml + "</sheetData></worksheet>";
  }

  @Test
  void cellsShownAsPercentArePercent() throws IOException {
    Soil soil = read(HEAD + "\n" + ROW).samples().get(0).soil();
    assertThat(soil.clayPct()).hasValue(31);
    assertThat(soil.gypsumPct()).hasValue(2);
  }

  @Test
  void theTableMayStandBehindACover() throws IOException {
    Ranch ranch = read("Report 12\nCustomer,Sample", HEAD + "\n" + ROW);
    assertThat(ranch.samples()).hasSize(1);
    assertThat(ranch.findings())
        .filteredOn(f -> f.code().id().equals("other-sheet"))
        .singleElement()
        .satisfies(f -> assertThat(f.done()).contains("sheet 2"));
  }

  @Test
  void theFirstTableIsTakenAndNothingSaid() throws IOException {
    Ranch ranch = read(HEAD + "\n" + ROW, HEAD + "\n" + ROW + "\n" + ROW.replace("A,", "B,"));
    assertThat(ranch.samples()).hasSize(1);
    assertThat(ranch.findings()).extracting(f -> f.code().id()).doesNotContain("other-sheet");
  }

  /** Some programs write formulas and leave the sums to the spreadsheet. */
  @Test
  void aFormulaWithoutItsResultIsSaid() throws IOException {
    Ranch ranch = read("id,lon,lat,depth,method,ec,unit,sar\nA,-150,30,0-30 cm,paste,4,dS/m,=");
    assertThat(ranch.samples().get(0).ions().sar()).isEmpty();
    assertThat(ranch.findings())
        .anyMatch(
            f -> f.code().id().equals("not-a-number") && f.found().contains("without its result"));
  }
}
