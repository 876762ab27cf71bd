package fieldsalt.read;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.finding.Finding;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.Ions;
import fieldsalt.read.sample.Sample;
import fieldsalt.read.word.PlainText;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;

/**
 * Ten invented laboratory sheets in ten layouts, read as they come: each trouble that sheets have
 * stands in at least two of them. What the sheet cannot say (its sites, a factor, whose header is
 * whose) the job says.
 */
class LaboratorySheetsTest {
  private static Path sheet(String name) {
    try {
      return Path.of(LaboratorySheetsTest.class.getResource("sheets/" + name).toURI());
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Ranch read(String name, String... sets) {
    return RanchReader.readTable(
        JobDocument.ofSettings(Path.of(""), List.of(sets)), List.of(sheet(name)));
  }

  private static List<String> lines(Ranch ranch) {
    return ranch.samples().stream().map(LaboratorySheetsTest::line).toList();
  }

  private static String line(Sample s) {
    String ec =
        s.ec()
            .map(
                e ->
                    switch (e.censored()) {
                          case BELOW -> "<";
                          case ABOVE -> ">";
                          default -> "";
                        }
                        + PlainText.number(e.dSPerM()))
            .orElse("-");
    return String.join(
        " | ",
        s.id(),
        PlainText.number(s.depth().topCm()) + "-" + PlainText.number(s.depth().bottomCm()),
        s.method().map(m -> m.label()).orElse("-")
            + " "
            + s.reading().name().toLowerCase(Locale.ROOT),
        ec,
        s.date().map(Object::toString).orElse("-"));
  }

  private static List<String> codes(Ranch ranch) {
    return ranch.findings().stream().map(f -> f.code().id()).sorted().toList();
  }

  private static void assertPlaced(Ranch ranch, String id, double lon, double lat) {
    Sample sample =
        ranch.samples().stream().filter(s -> s.id().equals(id)).findFirst().orElseThrow();
    double[] at =
        ranch
            .projection()
            .toLonLat(sample.place().orElseThrow().xM(), sample.place().orElseThrow().yM());
    assertThat(at[0]).isCloseTo(lon, Assertions.offset(1e-7));
    assertThat(at[1]).isCloseTo(lat, Assertions.offset(1e-7));
  }

  @Test
  void twoMethodsOnALineWithTitlesBomQuotesInchesAndSitesElsewhere() {
    Ranch ranch = read("01-two-methods.csv", "sites=" + sheet("01-sites.csv"));
    assertThat(lines(ranch))
        .containsExactly(
            "a1 | 0-30.48 | 1:1 unknown | 1.9 | 2026-03-10",
            "a1 | 0-30.48 | paste extract | 4.1 | 2026-03-10",
            "A2 | 0-30.48 | 1:1 unknown | <0.1 | 2026-03-10",
            "A3 | 30.48-60.96 | 1:1 unknown | 2.4 | 2026-03-10",
            "B9 | 0-30.48 | 1:1 unknown | 1.1 | 2026-03-10");
    assertPlaced(ranch, "a1", -153.01, 30.001);
    assertPlaced(ranch, "A3", -153.008, 30.003);
    assertThat(ranch.findings())
        .extracting(f -> f.code().id() + ": " + f.found())
        .contains(
            "samples-without-site: no coordinates for the samples B9",
            "sites-without-sample: no sample for the sites Z7",
            "totals-line: a totals line ('Mean')",
            "text-line: a line of text");
    assertThat(ranch.findings())
        .filteredOn(f -> f.code().id().equals("no-reading"))
        .extracting(Finding::where)
        .containsExactly("01-two-methods.csv row 6");
  }

  @Test
  void semicolonsDecimalCommasOldEncodingAndAboveTheLimit() {
    Ranch ranch =
        read(
            "02-semicolons.csv",
            "columns.id=Probe-Nr",
            "columns.depth=Tiefe",
            "columns.date=Datum",
            "columns.temperature_c=Temperatur");
    assertThat(lines(ranch))
        .containsExactly(
            "P1 | 0-30 | 1:5 unknown | 0.6135 | 2026-03-10",
            "P1 | 30-60 | 1:5 unknown | 1.2505 | 2026-03-10",
            "P2 | 0-30 | 1:5 unknown | >20 | 2026-03-11");
    assertThat(ranch.samples().get(0).temperatureC()).hasValue(21.5);
    assertPlaced(ranch, "P2", -153.0092, 30.0021);
    assertThat(codes(ranch)).contains("no-reading", "depth-unit-missing");
  }

  @Test
  void tabsWideCharactersALineOfUnitsAndDepthsInTheIds() {
    Ranch ranch = read("03-tabs.txt", "sites=" + sheet("03-sites.gpx"));
    assertThat(lines(ranch))
        .containsExactly(
            "N-1 | 0-30 | 1:5 unknown | 0.412 | -",
            "N-1 | 30-60 | 1:5 unknown | 0.53 | -",
            "N-2 | 0-30 | - unknown | - | -",
            "N-3 | 0-30 | 1:5 unknown | <0.01 | -");
    assertPlaced(ranch, "N-1", -153.0101, 30.0011);
    assertThat(ranch.samples().get(0).laboratory()).isEqualTo("East Lab");
    assertThat(ranch.samples().get(0).soil().clayPct()).hasValue(38);
    assertThat(ranch.samples().get(2).soil().ph()).hasValue(7.9);
    assertThat(ranch.findings()).extracting(Finding::found).contains("no sample for the sites N-4");
  }

  @Test
  void aWorkbookWithGroupsAboveItsHeaderRealDatesAndFormulas() {
    Ranch ranch = read("04-workbook.xlsx");
    assertThat(lines(ranch))
        .containsExactly(
            "X1 | 0-15 | 1:5 unknown | 0.613 | 2026-03-10",
            "X1 | 0-15 | paste extract | 4.1 | 2026-03-10",
            "X1 | 15-30 | 1:5 unknown | 0.535 | 2026-03-10",
            "X2 | 0-15 | 1:5 unknown | <0.01 | 2026-03-11",
            "X2 | 0-15 | paste extract | >20 | 2026-03-11");
    assertThat(ranch.samples().get(4).source()).hasToString("04-workbook.xlsx row 8");
    assertThat(ranch.samples().get(4).soil().texture())
        .isEqualTo(fieldsalt.quantity.Texture.SANDY_LOAM);
  }

  @Test
  void aWorkbookOfCompositesWithHeadersThatOnlyTheJobKnows() {
    Ranch ranch =
        read(
            "05-mapped-workbook.xlsx",
            "columns.id=Barrel",
            "columns.field=Paddock",
            "columns.sampled=How taken",
            "columns.ec_paste=Number of the meter",
            "defaults.unit=dS/m");
    assertThat(lines(ranch))
        .containsExactly(
            "M1 | 0-15.24 | paste extract | 5.4 | -", "M2 | 0-15.24 | paste extract | 7.25 | -");
    assertThat(ranch.samples()).allMatch(Sample::composite);
    assertThat(ranch.samples()).extracting(Sample::field).containsExactly("North", "South");
    assertThat(codes(ranch)).containsExactly("no-reading");
  }

  @Test
  void dissolvedSolidsWithAStatedFactorSingleDepthsAndDegreesWithLetters() {
    Ranch ranch = read("06-tds.csv", "tds-factor=640");
    assertThat(lines(ranch))
        .containsExactly(
            "T1 | 0-30.48 | paste extract | 2 | 2026-03-10",
            "T1 | 30.48-60.96 | paste extract | 4 | 2026-03-10",
            "T2 | 0-30.48 | paste extract | 1 | 2026-03-25");
    assertPlaced(ranch, "T1", -153.0101, 30.0011);
    assertPlaced(ranch, "T2", -153.0092, 30.0021);
    assertThat(codes(ranch)).containsExactly("depth-single", "depth-single");
  }

  @Test
  void unitsThatChangeFromRowToRowWithALaboratorysOwnFactor() {
    Ranch ranch = read("07-units.csv", "laboratory.South Lab.tds-factor=560", "crs=EPSG:32605");
    assertThat(lines(ranch))
        .containsExactlyElementsOf(
            Arrays.stream(new int[] {1, 2, 3, 4, 5, 6})
                .mapToObj(i -> "U" + i + " | 0-30 | 1:5 unknown | 0.625 | -")
                .collect(Collectors.toList()));
    assertThat(ranch.samples().get(1).place().orElseThrow().xM())
        .isCloseTo(499100.5, Assertions.offset(1e-6));
    Ranch without = read("07-units.csv", "crs=EPSG:32605");
    assertThat(without.samples()).hasSize(5);
    assertThat(codes(without)).contains("tds-without-factor");
  }

  @Test
  void aSheetWithoutASingleNameOfOurs() {
    Ranch ranch =
        read(
            "08-mapped.csv",
            "columns.id=kenn-nr",
            "columns.x=Rechts",
            "columns.y=Hoch",
            "columns.depth_top_cm=von",
            "columns.depth_bottom_cm=bis",
            "columns.\"ec_1:5\"=[\"Cond., soil 1:5, mS/m\"]",
            "columns.ec_paste=Paste reading",
            "columns.texture=Bodenart",
            "defaults.unit=dS/m",
            "depth-unit=cm",
            "crs=local");
    assertThat(lines(ranch))
        .containsExactly(
            "K1 | 0-30 | 1:5 unknown | 0.625 | -",
            "K1 | 0-30 | paste extract | 4.1 | -",
            "K2 | 0-30 | 1:5 unknown | 0.41 | -",
            "K3 | 0-30 | 1:5 unknown | 12.5 | -",
            "K3 | 0-30 | paste extract | >20 | -");
    assertThat(ranch.samples().get(3).soil().texture())
        .isEqualTo(fieldsalt.quantity.Texture.LIGHT_CLAY);
    assertThat(ranch.projection().isLocal()).isTrue();
  }

  @Test
  void wordsForMethodsCompositesAndWhatIsRefused() {
    Ranch ranch = read("09-words.csv");
    assertThat(lines(ranch))
        .containsExactly(
            "W1 | 0-30.48 | paste extract | 4.1 | -",
            "W2 | 0-30.48 | 1:2 slurry | 1.2 | -",
            "W3 | 0-30.48 | 1:5 extract | 0.61 | -",
            "W4 | 0-30.48 | 1:2.5 extract | <0.05 | -",
            "C1 | 0-30.48 | paste extract | >20 | -");
    assertThat(ranch.findings())
        .filteredOn(f -> f.code().id().equals("method-refused"))
        .extracting(f -> f.where() + ": " + f.done())
        .anySatisfy(t -> assertThat(t).contains("row 8", "no relation for a 1:1.5"))
        .anySatisfy(t -> assertThat(t).contains("row 9", "by volume"));
  }

  @Test
  void theWholeReportOfALaboratoryWithoutAnyMapping() {
    Ranch ranch = read("10-full-report.csv", "sites=" + sheet("10-sites.geojson"), "depth-unit=in");
    assertThat(lines(ranch))
        .containsExactly(
            "F1 | 0-15.24 | paste extract | 6.2 | -",
            "F1 | 0-15.24 | 1:1 unknown | 2.9 | -",
            "F2 | 0-15.24 | paste extract | 9.8 | -",
            "F2 | 0-15.24 | 1:1 unknown | 4.4 | -");
    Sample first = ranch.samples().get(0);
    assertThat(first.ions().method()).isEqualTo("paste");
    assertThat(values(first.ions().ca(), first.ions().mg(), first.ions().na(), first.ions().k()))
        .containsExactly(22.0, 11.5, 31.0, 0.6);
    assertThat(first.ions().cl().orElseThrow()).isCloseTo(10.0, Assertions.offset(0.05));
    assertThat(values(first.ions().hco3(), first.ions().so4(), first.ions().sar()))
        .containsExactly(3.2, 24.0, 7.6);
    assertThat(values(first.ions().boronMgL(), first.ions().espPct())).containsExactly(0.8, 9.1);
    assertThat(values(first.soil().spPct(), first.soil().ph(), first.soil().cecCmolKg()))
        .containsExactly(48.0, 7.9, 24.0);
    assertThat(values(first.soil().omPct(), first.soil().gypsumPct())).containsExactly(1.4, 0.5);
    assertThat(first.soil().limePct()).isEmpty();
    assertThat(first.extras().lime()).isEqualTo("++");
    assertThat(first.extras().gypsumRequirementMgHa().orElseThrow())
        .isCloseTo(1.5 * 2.2417, Assertions.offset(1e-3));
    assertThat(ranch.samples().get(1).ions()).isEqualTo(Ions.none());
    assertThat(ranch.samples().get(2).ions().atMost()).isEqualTo("ca");
    assertThat(ranch.samples().get(2).ions().ca()).hasValue(0.5);
    assertPlaced(ranch, "F1", -153.01, 30.001);
  }

  private static List<Double> values(OptionalDouble... cells) {
    return Arrays.stream(cells).map(OptionalDouble::orElseThrow).toList();
  }
}
