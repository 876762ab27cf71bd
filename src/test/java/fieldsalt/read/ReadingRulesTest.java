package fieldsalt.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import fieldsalt.finding.InputProblem;
import fieldsalt.quantity.DepthRange;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.quantity.Texture;
import fieldsalt.quantity.TextureGroup;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.Ec;
import fieldsalt.read.sample.Ions;
import fieldsalt.read.sample.PairKind;
import fieldsalt.read.sample.Sample;
import fieldsalt.read.sample.Soil;
import fieldsalt.read.word.NumberCell;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The rules of reading a laboratory's sheet, one by one. */
class ReadingRulesTest {
  @TempDir Path folder;

  private Ranch read(String text, String... sets) {
    try {
      Path file = Files.writeString(folder.resolve("s.csv"), text);
      return RanchReader.readTable(JobDocument.ofSettings(folder, List.of(sets)), List.of(file));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private Sample one(String text, String... sets) {
    Ranch ranch = read(text, sets);
    assertThat(ranch.samples()).hasSize(1);
    return ranch.samples().get(0);
  }

  private InputProblem refused(String text, String... sets) {
    return catchThrowableOfType(InputProblem.class, () -> read(text, sets));
  }

  private static List<String> codes(Ranch ranch) {
    return ranch.findings().stream().map(f -> f.code().id()).distinct().sorted().toList();
  }

  private static double ec(Ranch ranch, int row) {
    return ranch.samples().get(row).ec().orElseThrow().dSPerM();
  }

  // 1: method has no default

  @Test
  void withoutAnyMethodTheRemediesAreNamed() {
    assertThat(refused("id,ec,unit\nA,0.6,dS/m\nB,0.7,dS/m\n"))
        .hasMessageContaining("column method")
        .hasMessageContaining("defaults: {method: ...}")
        .hasMessageContaining("laboratory");
  }

  @Test
  void aMethodComesFromCellHeaderLaboratoryOrDefaultInThisOrder() {
    String text = "id,lab,method,ec,unit\nA,L1,,0.6,dS/m\nB,L2,,0.7,dS/m\nC,L2,1:1,0.8,dS/m\n";
    Ranch ranch = read(text, "laboratory.l1.method=1:5", "defaults.method=1:2");
    assertThat(ranch.samples())
        .extracting(s -> s.method().orElseThrow())
        .containsExactly(Method.ONE_TO_FIVE, Method.ONE_TO_TWO, Method.ONE_TO_ONE);
    assertThat(one("id,EC 1:5 (dS/m)\nA,0.6\n", "defaults.method=paste").method())
        .contains(Method.ONE_TO_FIVE);
  }

  @Test
  void aFileCanBelongToALaboratoryAsAWhole() {
    Ranch ranch =
        read(
            "id,lab,ec,unit\nA,,0.6,dS/m\nB,L2,0.7,dS/m\n",
            "laboratory.L1.files=s.csv",
            "laboratory.L1.method=1:5",
            "laboratory.L2.method=1:1");
    assertThat(ranch.samples())
        .extracting(x -> x.laboratory() + " " + x.method().orElseThrow().label())
        .containsExactly("L1 1:5", "L2 1:1");
  }

  @Test
  void theOnlyLaboratoryOfAJobIsThatOfRowsWithoutOneUnlessItHasFilesOfItsOwn() {
    String text = "id,ec,unit\nA,0.6,dS/m\n";
    assertThat(one(text, "laboratory.L1.method=1:5").laboratory()).isEqualTo("L1");
    assertThat(refused(text, "laboratory.L1.method=1:5", "laboratory.L1.files=other.csv"))
        .hasMessageContaining("readings without a method");
  }

  @Test
  void aCommaThatMayBeEitherIsSaid() {
    Ranch thousands = read("id,EC 1:5 uS/cm\nA,\"1,250\"\n");
    assertThat(ec(thousands, 0)).isEqualTo(1.25);
    assertThat(codes(thousands)).contains("comma-open");
    Ranch decimals = read("id;EC 1:5 dS/m\nA;1,250\n");
    assertThat(ec(decimals, 0)).isEqualTo(1.25);
    assertThat(codes(read("id,EC 1:5 uS/cm\nA,\"1,250\"\nB,612.5\n"))).doesNotContain("comma-open");
  }

  @Test
  void aRowWithoutMethodAmongOthersIsLeftOutByItself() {
    Ranch ranch = read("id,method,ec,unit\nA,,0.6,dS/m\nB,1:5,0.7,dS/m\n");
    assertThat(ranch.samples()).extracting(Sample::id).containsExactly("B");
    assertThat(codes(ranch)).contains("method-missing");
  }

  @Test
  void aMissingUnitIsDsPerMOnlyIfAllValuesOfTheColumnCanBe() {
    Ranch fits = read("id,method,ec\nA,1:5,0.6\nB,1:5,0.7\n");
    assertThat(ec(fits, 0)).isEqualTo(0.6);
    assertThat(codes(fits)).contains("unit-missing");
    assertThat(refused("id,method,ec\nA,1:5,613\nB,1:5,0.7\nC,1:5,720\nD,1:5,540\nE,1:5,500\n"))
        .hasMessageContaining("defaults: {unit: ...}")
        .hasMessageContaining("\u00b5S/cm?");
    Ranch told = read("id,method,ec\nA,1:5,613\nB,1:5,720\n", "defaults.unit=uS/cm");
    assertThat(ec(told, 0)).isCloseTo(0.613, Assertions.offset(1e-12));
    assertThat(codes(told)).doesNotContain("unit-missing");
  }

  @Test
  void aUnitThatNobodyKnowsLeavesTheRowOut() {
    String text = "id,method,ec,unit\nA,1:5,0.6,mS\nB,1:5,0.7,dS/m\n";
    Ranch ranch = read(text);
    assertThat(ranch.samples()).extracting(Sample::id).containsExactly("B");
    assertThat(codes(ranch)).contains("unit-unknown");
    assertThat(read(text, "confirm.A=mS/cm").samples()).hasSize(2);
  }

  @Test
  void aMissingDepthIsTheDefaultLayerWithAFinding() {
    Ranch ranch = read("id,method,ec,unit\nA,1:5,0.6,dS/m\n");
    assertThat(ranch.samples().get(0).depth()).isEqualTo(new DepthRange(0, 30));
    assertThat(codes(ranch)).containsExactly("depth-missing");
    Ranch said = read("id,method,ec,unit\nA,1:5,0.6,dS/m\n", "defaults.depth-cm=[0, 60]");
    assertThat(said.samples().get(0).depth()).isEqualTo(new DepthRange(0, 60));
    assertThat(said.findings()).isEmpty();
  }

  // 2: a header that says "calculated" is no measurement

  @Test
  void aColumnThatSaysCalculatedIsNoReading() {
    Ranch ranch = read("id,EC1:5 dS/m,ECe (calc.) dS/m\nA,0.6,5.7\n");
    assertThat(ranch.samples())
        .singleElement()
        .matches(s -> s.method().get() == Method.ONE_TO_FIVE);
    assertThat(codes(ranch)).contains("calculated-column");
  }

  // 3, 4: what the probe stood in; what is refused

  @ParameterizedTest
  @CsvSource({
    "paste, '', PASTE, EXTRACT",
    "sat. paste, '', PASTE, EXTRACT",
    "Saturated Paste, '', PASTE, EXTRACT",
    "saturation extract, '', PASTE, EXTRACT",
    "ECe, '', PASTE, EXTRACT",
    "paste, slurry, PASTE, SLURRY",
    "1:1, '', ONE_TO_ONE, UNKNOWN",
    "1 to 1 extract, '', ONE_TO_ONE, EXTRACT",
    "1:1 slurry, '', ONE_TO_ONE, SLURRY",
    "1 : 2, extract, ONE_TO_TWO, EXTRACT",
    "1to5, suspension, ONE_TO_FIVE, SLURRY",
    "'1:2,5', '', ONE_TO_TWO_AND_HALF, UNKNOWN",
    "1:5 w/v, filtered extract, ONE_TO_FIVE, EXTRACT",
    "1/5, settled suspension, ONE_TO_FIVE, EXTRACT"
  })
  void wordsForMethods(String method, String reading, Method expected, ReadingKind kind) {
    Sample sample = one("id;method;reading;ec;unit\nA;" + method + ";" + reading + ";0.6;dS/m\n");
    assertThat(sample.method()).contains(expected);
    assertThat(sample.reading()).isEqualTo(kind);
  }

  @ParameterizedTest
  @CsvSource({
    "1:1.5, no relation",
    "1:10, no relation",
    "1:2 v/v, by volume",
    "1:2 by volume, by volume",
    "saturated media extract, growing media",
    "squeezed, growing media",
    "whatever, methods are paste"
  })
  void methodsWithoutARelationAreRefusedWithTheReason(String method, String reason) {
    Ranch ranch = read("id,method,ec,unit\nA," + method + ",0.6,dS/m\nB,1:5,0.6,dS/m\n");
    assertThat(ranch.samples()).extracting(Sample::id).containsExactly("B");
    assertThat(ranch.findings())
        .filteredOn(f -> f.code().id().equals("method-refused"))
        .singleElement()
        .satisfies(f -> assertThat(f.done()).contains(reason));
  }

  // 5: cells

  @ParameterizedTest
  @ValueSource(strings = {"ND", "n/a", "insufficient sample", "#VALUE!", "see note", "1.2.3x"})
  void wordsInAReadingAreAFindingOfThatRow(String cell) {
    Ranch ranch = read("id,method,ec,unit\nA,1:5," + cell + ",dS/m\nB,1:5,0.6,dS/m\n");
    assertThat(ranch.samples()).extracting(Sample::id).containsExactly("B");
    assertThat(ranch.findings())
        .filteredOn(f -> f.code().id().equals("no-reading"))
        .singleElement()
        .satisfies(f -> assertThat(f.where()).isEqualTo("s.csv row 2"))
        .satisfies(f -> assertThat(f.found()).contains(cell));
    assertThat(refused("id,method,ec,unit\nA,1:5," + cell + ",dS/m\n"))
        .hasMessageContaining("no usable reading");
  }

  @ParameterizedTest
  @CsvSource({
    "<0.1, BELOW, 0.1",
    "< 0.1, BELOW, 0.1",
    "less than 0.1, BELOW, 0.1",
    ">20, ABOVE, 20",
    "\u226520, ABOVE, 20",
    "4.2*, NO, 4.2",
    "4.2 dS/m, NO, 4.2",
    "420 mS/m, NO, 4.2",
    "4.2E0, NO, 4.2",
    ".42e1, NO, 4.2"
  })
  void limitsFlagsAndUnitsInACell(String cell, Ec.Censored censored, double value) {
    Ec ec = one("id,method,ec,unit\nA,1:1," + cell + ",dS/m\n").ec().orElseThrow();
    assertThat(ec.censored()).isEqualTo(censored);
    assertThat(ec.dSPerM()).isCloseTo(value, Assertions.offset(1e-12));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "1,25; true; 1.25",
        "1.234,5; true; 1234.5",
        "1,234.5; false; 1234.5",
        "1,234; false; 1234",
        "1,234; true; 1.234",
        "1 234; false; 1234",
        "1'234.5; false; 1234.5",
        "\u22121.5; false; -1.5",
        "1.234.567; false; 1234567"
      })
  void numbersOfEveryCountry(String cell, boolean comma, double value) {
    assertThat(NumberCell.parse(cell, comma).value()).isEqualTo(value);
  }

  @Test
  void saltyReadingsAreKeptAndImpossibleOnesNot() {
    Ranch ranch =
        read(
            """
            id,method,ec,unit
            A,paste,48,dS/m
            B,paste,75,dS/m
            C,paste,0,dS/m
            D,paste,-1,dS/m
            """);
    assertThat(ranch.samples()).extracting(Sample::id).containsExactly("A", "B");
    assertThat(codes(ranch)).contains("unusual", "impossible");
  }

  @ParameterizedTest
  @CsvSource({
    "4000, dS/m, \u00b5S/cm, 4",
    "410, dS/m, mS/m, 4.1",
    "0.0041, dS/m, 1000 times too small, 4.1",
    "0.041, dS/m, 100 times too small, 4.1",
    "7.2, uS/cm, dS/m, 7.2",
    "0.72, mS/m, S/m, 7.2",
    "65, dS/m, 10 times too large, 6.5"
  })
  void aSlipOfTheUnitIsNamedAndLeftOutUntilConfirmed(
      String value, String unit, String likely, String ds) {
    StringBuilder text = new StringBuilder("id,method,ec,unit\n");
    for (int i = 0; i < 6; i++) {
      text.append("N").append(i).append(",paste,").append(5 + i).append(",dS/m\n");
    }
    text.append("X,paste,").append(value).append(',').append(unit).append('\n');
    Ranch ranch = read(text.toString());
    assertThat(ranch.samples()).extracting(Sample::id).doesNotContain("X");
    assertThat(ranch.findings())
        .filteredOn(f -> f.code().id().equals("unit-slip"))
        .singleElement()
        .satisfies(f -> assertThat(f.found()).contains(likely, "= " + ds + " dS/m"))
        .satisfies(f -> assertThat(f.done()).contains("confirm: {\"8\""));
  }

  @Test
  void aLimitOfDetectionIsNoSlipHoweverLow() {
    StringBuilder text = new StringBuilder("id,method,ec,unit\n");
    for (int i = 0; i < 6; i++) {
      text.append("N").append(i).append(",paste,").append(5 + i).append(",dS/m\n");
    }
    Ranch ranch = read(text + "X,paste,<0.005,dS/m\nY,paste,>70,dS/m\n");
    assertThat(ranch.samples()).extracting(Sample::id).contains("X", "Y");
    assertThat(codes(ranch)).doesNotContain("unit-slip");
  }

  @Test
  void aConfirmedUnitIsUsed() {
    String text = "id,method,ec,unit\nA,paste,5,dS/m\nX,paste,4000,dS/m\nY,paste,65,dS/m\n";
    Ranch ranch = read(text, "confirm.X=uS/cm", "confirm.4=dS/m");
    assertThat(ranch.samples()).extracting(Sample::id).containsExactly("A", "X", "Y");
    assertThat(ec(ranch, 1)).isEqualTo(4);
    assertThat(codes(ranch)).doesNotContain("unit-slip");
  }

  @Test
  void aWholeColumnInTheWrongUnitIsSuspected() {
    StringBuilder text = new StringBuilder("id,EC 1:5 (uS/cm)\n");
    for (int i = 0; i < 6; i++) {
      text.append("N").append(i).append(",0.").append(5 + i).append('\n');
    }
    assertThat(refused(text.toString()))
        .hasMessageContaining("dS/m")
        .hasMessageContaining("by a factor of 1000");
  }

  // 6: temperature

  @Test
  void temperatureIsCompensatedUnlessTheRowSaysNo() {
    Ranch ranch =
        read(
            """
            id,method,ec,unit,temperature_c,temperature_compensated
            A,1:5,0.6,dS/m,18,
            B,1:5,0.6,dS/m,18,no
            C,1:5,0.6,dS/m,18,yes
            """);
    assertThat(ranch.samples())
        .extracting(Sample::temperatureCompensated)
        .containsExactly(true, false, true);
    assertThat(one("id,EC 1:5 dS/m,Temp (F)\nA,0.6,68\n").temperatureC().orElseThrow())
        .isCloseTo(20, Assertions.offset(1e-9));
  }

  // 7: coordinates in a second file

  @Test
  void ofAFileOfSitesOnlyIdsAndPlacesAreRead() throws IOException {
    Path sites =
        Files.writeString(
            folder.resolve("sites.csv"), "id,lon,lat,texture,date\nA,-153.001,30.001,mud,soon\n");
    Ranch ranch =
        read("id,method,ec dS/m\nA,paste,4.2\n", "sites=" + sites, "defaults.depth-cm=0,30");
    assertThat(ranch.samples().get(0).place()).isPresent();
    assertThat(ranch.findings()).isEmpty();
  }

  @Test
  void sitesAreJoinedByIdWithoutItsDepthSuffix() throws IOException {
    Path sites =
        Files.writeString(folder.resolve("p.csv"), "id,lon,lat\nA 1,-153,30\nB2,-153.1,30\n");
    Ranch ranch =
        read(
            "id,EC 1:5 dS/m\n a 1-topsoil,0.6\nb2-subsoil,0.7\n",
            "sites=" + sites,
            "id-pattern=^(.+)-[a-z]+$");
    assertThat(ranch.samples()).allMatch(s -> s.place().isPresent());
    assertThat(ranch.samples()).extracting(Sample::id).containsExactly("a 1", "b2");
  }

  @Test
  void withoutAnIdASiteIsCalledByItsPlaceToACentimetre() {
    Ranch ranch =
        read("lon,lat,EC 1:5 dS/m\n-153.0101234,30.0020001,0.6\n-153.0101244,30.0020001,0.7\n");
    assertThat(ranch.samples())
        .extracting(Sample::id)
        .containsExactly("-153.0101234 30.0020001", "-153.0101244 30.0020001");
  }

  @Test
  void anIdThatOnlyLooksLikeADepthIsLeftAlone() {
    Ranch ranch = read("id,depth,EC 1:5 dS/m\nR-1-2,0-30 cm,0.6\nR-1-3,0-30 cm,0.7\n");
    assertThat(ranch.samples()).extracting(Sample::id).containsExactly("R-1-2", "R-1-3");
    Ranch same = read("id,depth,EC 1:5 dS/m\nR1 0-30,0-30 cm,0.6\nR1 30-60,30-60 cm,0.7\n");
    assertThat(same.samples()).extracting(Sample::id).containsExactly("R1", "R1");
  }

  // 8: depths

  @ParameterizedTest
  @CsvSource({
    "0-12 in, 0, 30.48",
    "0 to 30 cm, 0, 30",
    "0\u201360, 0, 60",
    "'0-12\"', 0, 30.48",
    "0-1 ft, 0, 30.48",
    "30cm - 60cm, 30, 60",
    "0-6 inches, 0, 15.24",
    "top 15 cm, 0, 15",
    "25 cm, 0, 25",
    "0/20, 0, 20",
    "'0-7,5 cm', 0, 7.5"
  })
  void depthsAsText(String text, double top, double bottom) {
    Sample sample = one("id;depth;EC 1:5 dS/m\nA;" + text + ";0.6\n");
    assertThat(sample.depth().topCm()).isCloseTo(top, Assertions.offset(1e-9));
    assertThat(sample.depth().bottomCm()).isCloseTo(bottom, Assertions.offset(1e-9));
  }

  @Test
  void depthsThatLookLikeInchesAreAskedNotGuessed() {
    String text = "id,depth,EC 1:5 dS/m\nA,12,0.6\nA,24,0.7\n";
    assertThat(refused(text)).hasMessageContaining("depth-unit: in");
    Ranch ranch = read(text, "depth-unit=in");
    assertThat(ranch.samples())
        .extracting(s -> Math.rint(s.depth().topCm()) + "-" + Math.rint(s.depth().bottomCm()))
        .containsExactly("0.0-30.0", "30.0-61.0");
  }

  @ParameterizedTest
  @ValueSource(strings = {"30-0 cm", "deep", "2026-06-12", "0-0"})
  void aDepthThatIsNoneLeavesTheRowOut(String depth) {
    Ranch ranch = read("id,depth,EC 1:5 dS/m\nA," + depth + ",0.6\nB,0-30 cm,0.7\n");
    assertThat(ranch.samples()).extracting(Sample::id).containsExactly("B");
    assertThat(codes(ranch)).contains("bad-depth");
  }

  // 9: what laboratories print

  @ParameterizedTest
  @CsvSource({
    "dS/m, 1",
    "mmhos/cm, 1",
    "mmho/cm, 1",
    "dS m-1, 1",
    "dS m\u207b\u00b9, 1",
    "mS/cm, 1",
    "umhos/cm, 0.001",
    "\u00b5S/cm, 0.001",
    "\u03bcS/cm, 0.001",
    "uS cm-1, 0.001",
    "micromhos/cm, 0.001",
    "mS/m, 0.01",
    "mS m-1, 0.01",
    "S/m, 10",
    "dS/m @ 25 C, 1",
    "DS/M, 1"
  })
  void everySpellingOfAUnitInAHeader(String unit, double factor) {
    double raw = 2 / factor;
    for (String header :
        List.of("EC sat. paste (" + unit + ")", "ECe [" + unit + "]", "ECe, " + unit)) {
      Sample sample = one("id;" + header + "\nA;" + raw + "\n");
      assertThat(sample.ec().orElseThrow().dSPerM())
          .as(header)
          .isCloseTo(2, Assertions.offset(1e-9));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "ECe, PASTE",
    "ECse, PASTE",
    "EC_e, PASTE",
    "EC sat. paste, PASTE",
    "EC (sat paste), PASTE",
    "'E.C. (saturated paste extract)', PASTE",
    "soluble salts 1:1, ONE_TO_ONE",
    "EC 1:5, ONE_TO_FIVE",
    "EC1:5, ONE_TO_FIVE",
    "EC_1_5, ONE_TO_FIVE",
    "EC (1:2.5), ONE_TO_TWO_AND_HALF",
    "Electrical conductivity 1:2, ONE_TO_TWO",
    "Conductivity (1 to 1), ONE_TO_ONE",
    "EC25 1:5, ONE_TO_FIVE"
  })
  void headersThatNameTheirMethod(String header, Method method) {
    assertThat(one("id;" + header + ";unit\nA;0.6;dS/m\n").method()).contains(method);
  }

  @Test
  void ionsInMilligramsAreMilliequivalents() {
    // one mole of charge: Na 22.99 g, Ca 20.04 g, Cl 35.45 g, SO4 48.03 g (IUPAC atomic masses)
    Sample sample =
        one("id,EC paste dS/m,Na mg/L,Ca (mg/L),cl_mg_l,SO4 mg/l\nA,5,229.9,200.4,354.5,480.3\n");
    assertThat(sample.ions().na().orElseThrow()).isCloseTo(10, Assertions.offset(0.001));
    assertThat(sample.ions().ca().orElseThrow()).isCloseTo(10, Assertions.offset(0.001));
    assertThat(sample.ions().cl().orElseThrow()).isCloseTo(10, Assertions.offset(0.001));
    assertThat(sample.ions().so4().orElseThrow()).isCloseTo(10, Assertions.offset(0.001));
    assertThat(sample.ions().method()).isEqualTo("paste");
  }

  @Test
  void theLaboratorysGypsumRequirementNeedsItsUnit() {
    String text = "id,EC paste dS/m,Gypsum requirement%s\nA,5,2\n";
    assertThat(one(text.formatted(" (t/ha)")).extras().gypsumRequirementMgHa()).hasValue(2);
    // a short ton is 907.185 kg, an acre 0.404686 ha
    assertThat(one(text.formatted(" (tons/acre)")).extras().gypsumRequirementMgHa().orElseThrow())
        .isCloseTo(2 * 0.907185 / 0.404686, Assertions.offset(1e-4));
    assertThat(one(text.formatted("")).extras().gypsumRequirementMgHa()).isEmpty();
    assertThat(codes(read(text.formatted("")))).contains("unit-missing");
  }

  @Test
  void sodiumInPpmOfAFertilityReportIsExtractable() {
    Ranch ranch = read("id,EC 1:1 dS/m,Na ppm,Ca ppm\nA,1,230,1500\n");
    Ions ions = ranch.samples().get(0).ions();
    assertThat(ions.na()).isEmpty();
    assertThat(ions.ca()).isEmpty();
    assertThat(ions.naExtractableCmolKg().orElseThrow()).isCloseTo(1, Assertions.offset(0.001));
    assertThat(codes(ranch)).contains("extractable-ion");
  }

  @Test
  void dissolvedSolidsNeedAStatedFactor() {
    assertThat(refused("id,method,TDS (ppm)\nA,paste,1280\n")).hasMessageContaining("tds-factor");
    assertThat(ec(read("id,method,TDS (ppm)\nA,paste,1280\n", "tds-factor=640"), 0)).isEqualTo(2);
  }

  @ParameterizedTest
  @CsvSource({
    "sp_pct, 0.45, 100 times too small", "bulk_density, 1450, 1000 times too large",
        "ph, 81, 10 times too large",
    "clay_pct, 350, 10 times too large", "sar, -1, left out", "esp_pct, 120, left out"
  })
  void impossibleCellsAreLeftOutWithTheLikelySlip(String column, String value, String said) {
    Ranch ranch = read("id,EC 1:5 dS/m," + column + "\nA,0.6," + value + "\n");
    assertThat(ranch.findings())
        .filteredOn(f -> f.code().id().equals("impossible"))
        .singleElement()
        .satisfies(f -> assertThat(f.found() + f.done()).contains(said));
    Sample sample = ranch.samples().get(0);
    assertThat(sample.soil()).isEqualTo(Soil.unknown());
    assertThat(sample.ec()).isPresent();
  }

  // 10: texture

  @ParameterizedTest
  @CsvSource({
    "Sandy Loam, SANDY_LOAM",
    "SiCL, SILTY_CLAY_LOAM",
    "fine sandy loam, SANDY_LOAM",
    "moderately coarse, COARSE",
    "light, COARSE",
    "medium, MEDIUM",
    "moderately fine, FINE",
    "heavy, FINE",
    "clayey sand, LOAMY_SAND",
    "light clay, LIGHT_CLAY",
    "medium clay, MEDIUM_CLAY",
    "heavy clay, HEAVY_CLAY",
    "clay, CLAY",
    "gravelly loam, LOAM",
    "silty clay loam, SILTY_CLAY_LOAM"
  })
  void wordsForTexture(String word, Texture texture) {
    assertThat(one("id,EC 1:5 dS/m,texture\nA,0.6," + word + "\n").soil().texture())
        .isEqualTo(texture);
  }

  @Test
  void groupsAndSchemes() {
    assertThat(Texture.SANDY_CLAY_LOAM.group()).isEqualTo(TextureGroup.MEDIUM);
    assertThat(Texture.LOAMY_SAND.group()).isEqualTo(TextureGroup.COARSE);
    assertThat(Texture.LIGHT_CLAY.group()).isEqualTo(TextureGroup.FINE);
    Ranch mixed = read("id,EC 1:5 dS/m,texture\nA,0.6,loam\nB,0.6,medium clay\nC,0.5,brick\n");
    assertThat(codes(mixed)).contains("texture-schemes", "texture-unknown");
  }

  // 11: pairs

  @Test
  void whatKindOfPair() {
    Ranch ranch =
        read(
            "id,method,ec,unit,pair\nA,1:5,0.6,dS/m,\nA,paste,5,dS/m,split\nB,paste,5,dS/m,core\n");
    assertThat(ranch.samples())
        .extracting(Sample::pair)
        .containsExactly(PairKind.SPLIT, PairKind.SPLIT, PairKind.CORE);
  }

  // 12: dates

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2026-03-10",
        "2026/3/10",
        "10 Mar 2026",
        "Mar 10, 2026",
        "10-March-2026",
        "10.03.2026",
        "20260310",
        "2026-03-10T08:15:00",
        "10/3/26 x"
      })
  void clearDates(String text) {
    boolean clear = !text.endsWith("x");
    assertThat(one("id;EC 1:5 dS/m;date\nA;0.6;" + text + "\n").date())
        .isEqualTo(
            clear ? java.util.Optional.of(LocalDate.of(2026, 3, 10)) : java.util.Optional.empty());
  }

  @Test
  void anOpenOrderOfDayAndMonthIsSettledByOtherRowsOrAsked() {
    Ranch open = read("id,EC 1:5 dS/m,date\nA,0.6,03/04/2026\n");
    assertThat(open.samples().get(0).date()).isEmpty();
    assertThat(open.findings())
        .filteredOn(f -> f.code().id().equals("date-open"))
        .singleElement()
        .satisfies(f -> assertThat(f.done()).contains("date-order"));
    assertThat(read("id,EC 1:5 dS/m,date\nA,0.6,03/04/2026\nB,0.6,03/25/2026\n").samples())
        .extracting(s -> s.date().orElseThrow())
        .containsExactly(LocalDate.of(2026, 3, 4), LocalDate.of(2026, 3, 25));
    assertThat(one("id,EC 1:5 dS/m,date\nA,0.6,03/04/2026\n", "date-order=dmy").date())
        .contains(LocalDate.of(2026, 4, 3));
  }

  // sheets

  @Test
  void identicalRowsCountOnce() {
    Ranch ranch = read("id,method,ec,unit\nA,1:5,0.6,dS/m\nB,1:5,0.7,dS/m\nA,1:5,0.6,dS/m\n");
    assertThat(ranch.samples()).hasSize(2);
    assertThat(ranch.findings())
        .filteredOn(f -> f.code().id().equals("duplicate-row"))
        .singleElement()
        .satisfies(f -> assertThat(f.where()).isEqualTo("s.csv row 4"));
  }

  @Test
  void manyRowsWithOneTroubleAreOneFinding() {
    Ranch ranch = read("id,method,ec\nA,1:5,0.6\nB,1:5,0.7\nC,1:5,0.8\nD,1:5,0.9\n");
    assertThat(ranch.findings())
        .filteredOn(f -> f.code().id().equals("depth-missing"))
        .singleElement()
        .satisfies(f -> assertThat(f.where()).isEqualTo("s.csv rows 2-5 (4 rows)"));
  }

  @Test
  void twoColumnsOfOneReadingAreAFinding() {
    Ranch ranch = read("id,EC 1:5 (uS/cm),EC 1:5 (dS/m)\nA,600,0.6\n");
    assertThat(ranch.samples()).hasSize(1);
    assertThat(codes(ranch)).contains("column-twice");
  }

  @Test
  void aMistypedNameOfOursIsPointedOut() {
    Ranch ranch = read("id,EC 1:5 (dS/m),textture\nA,0.6,loam\n");
    assertThat(codes(ranch)).contains("column-unknown");
  }

  @Test
  void aMappedHeaderThatNoFileHasIsAProblemWithItsPlace() {
    assertThat(refused("id,EC 1:5 (dS/m)\nA,0.6\n", "columns.texture=Soil kind"))
        .hasMessageContaining("columns.texture")
        .hasMessageContaining("'Soil kind'");
  }

  @Test
  void aPropertyOfTheUsersOwnIsReadByItsHeader() {
    Ranch ranch = read("id,x,y,zinc\nA,1,2,1022\nB,3,4,ND\n", "property.column=zinc", "crs=local");
    assertThat(ranch.samples()).hasSize(1);
    assertThat(ranch.samples().get(0).extras().property()).hasValue(1022);
    assertThat(ranch.samples().get(0).place().orElseThrow().yM()).isEqualTo(2);
    assertThat(codes(ranch)).containsExactly("no-reading");
  }

  @Test
  void idsOfEveryScriptComeThrough() {
    for (String id :
        List.of("../../x", "Ñandú 2", "\uD83C\uDF3E", "\u05D0\u05D1", "n".repeat(300))) {
      assertThat(one("id,EC 1:5 dS/m\n" + id + ",0.6\n").id()).isEqualTo(id);
    }
  }
}
