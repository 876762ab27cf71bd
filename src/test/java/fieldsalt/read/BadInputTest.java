package fieldsalt.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import fieldsalt.finding.InputProblem;
import fieldsalt.read.field.BoundariesTest;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.job.JobTemplate;
import fieldsalt.read.sample.Sample;
import fieldsalt.read.site.SurveyReading;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whole jobs on spoiled files: told at once, each with where, found, expected and remedy. */
class BadInputTest {
  private static final String FIELD =
      """
      {"type":"FeatureCollection","features":[
      {"type":"Feature","properties":{"field":"north","texture":"clay loam","clay_pct":30},"geometry":{"type":"Polygon",
      "coordinates":[[[-153.01,30.0],[-153.0,30.0],[-153.0,30.005],[-153.01,30.005],[-153.01,30.0]]]}},
      {"type":"Feature","properties":{"field":"south"},"geometry":{"type":"Polygon",
      "coordinates":[[[-153.01,29.99],[-153.0,29.99],[-153.0,29.995],[-153.01,29.995],[-153.01,29.99]]]}}]}
      """;
  private static final String SAMPLES =
      """
      id,lon,lat,depth,method,ec,unit
      A,-153.005,30.002,0-30 cm,1:5,0.6,dS/m
      B,-153.004,30.003,0-30 cm,1:5,0.7,dS/m
      C,-153.003,30.001,0-30 cm,1:5,0.8,dS/m
      """;

  @TempDir Path folder;

  private Path write(String name, String text) {
    try {
      return Files.writeString(folder.resolve(name), text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private JobDocument job(String fields, String samples, String more) {
    write("fields.geojson", fields);
    write("samples.csv", samples);
    return JobDocument.read(
        write("job.yaml", "fields: fields.geojson\nsamples: samples.csv\n" + more), List.of());
  }

  private Ranch read(String samples, String more) {
    return RanchReader.read(job(FIELD, samples, more));
  }

  private InputProblem refused(String fields, String samples, String more) {
    return catchThrowableOfType(
        InputProblem.class, () -> RanchReader.read(job(fields, samples, more)));
  }

  private static List<String> codes(Ranch ranch) {
    return ranch.findings().stream().map(f -> f.code().id()).toList();
  }

  @Test
  void aCleanJobHasOnlyTheFindingOfTheFieldWithoutSites() {
    Ranch ranch = read(SAMPLES, "");
    assertThat(codes(ranch)).containsExactly("field-without-sites");
    assertThat(ranch.samples()).hasSize(3).allMatch(s -> s.field().equals("north"));
  }

  @Test
  void whatTheFieldSaysOfItsSoilFillsInForItsSamples() {
    Sample sample = read(SAMPLES, "").samples().get(0);
    assertThat(sample.soil().clayPct()).hasValue(30);
    assertThat(sample.soil().texture()).isEqualTo(fieldsalt.quantity.Texture.CLAY_LOAM);
    String own = SAMPLES.replace("unit\n", "unit,texture\n").replace("dS/m\n", "dS/m,sand\n");
    assertThat(read(own, "").samples().get(0).soil().texture())
        .isEqualTo(fieldsalt.quantity.Texture.SAND);
    assertThat(read(own, "").samples().get(0).soil().clayPct()).isEmpty();
  }

  @Test
  void everythingWrongInEveryFileIsToldAtOnce() {
    String bow = FIELD.replace("[-153.0,30.0],[-153.0,30.005]", "[-153.0,30.005],[-153.0,30.0]");
    InputProblem problem =
        refused(
            bow,
            "id,lon,lat,ec,unit\nA,-153,30,0.6,dS/m\n",
            "sites: none.csv\nsurvey: none2.csv\n");
    assertThat(problem.problems())
        .extracting(p -> p.where() + ": " + p.found())
        .anySatisfy(t -> assertThat(t).contains("fields.geojson feature 1 (north)", "crosses"))
        .anySatisfy(t -> assertThat(t).contains("samples.csv", "readings without a method"))
        .anySatisfy(t -> assertThat(t).contains("none.csv", "no such file"))
        .anySatisfy(t -> assertThat(t).contains("none2.csv", "no such file"));
    assertThat(problem.problems()).allSatisfy(p -> assertThat(p.remedy()).isNotBlank());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "   \n\n",
        "id,lon,lat,depth,method,ec,unit\n",
        "id,lon,lat,depth,method,ec,unit\nA,-153.005,30.002,0-30,1:5,ND,dS/m\n",
        "only words here\nand here\n",
        "a,b,c\n1,2,3\n",
        "{\"type\":\"FeatureCollection\",\"features\":[]}",
        "{\"type\":\"FeatureCollection\"",
        "id,lon,lat,ec\n\"A,1,2,3\n"
      })
  void samplesWithoutAUsableRowStopTheJob(String samples) {
    assertThat(refused(FIELD, samples, ""))
        .isNotNull()
        .hasMessageContaining("samples.csv")
        .message()
        .doesNotContain("Exception");
  }

  @Test
  void sitesOutsideAreGivenToTheNearestWithinFifteenMetresOrLeftOut() {
    // 0.0001 degrees of latitude are 11 m, 0.0002 are 22 m
    String more =
        SAMPLES
            + "D,-153.005,30.0051,0-30 cm,1:5,0.9,dS/m\n"
            + "E,-153.005,30.0052,0-30 cm,1:5,0.9,dS/m\n";
    Ranch ranch = read(more, "");
    assertThat(ranch.samples()).extracting(Sample::id).containsExactly("A", "B", "C", "D");
    assertThat(ranch.findings())
        .extracting(f -> f.code().id() + " " + f.where())
        .contains("near-field samples.csv row 5", "outside-fields samples.csv row 6");
  }

  @Test
  void swappedOrUnsignedCoordinatesAreRecognised() {
    String swapped = SAMPLES.replace("id,lon,lat", "id,lat,lon");
    assertThat(refused(FIELD, swapped, "")).hasMessageContaining("swapped?");
    String west = SAMPLES.replace("-153", "153");
    assertThat(refused(FIELD, west, "")).hasMessageContaining("minus sign");
    String europe = FIELD.replace("-153.0", "11.0").replace("29.99", "30.01");
    String there = SAMPLES.replace("-153.00", "11.00").replace("id,lon,lat", "id,lat,lon");
    assertThat(refused(europe, there, "")).hasMessageContaining("swapped");
  }

  @Test
  void aRowSaysAnotherFieldThanItsPlace() {
    Ranch ranch =
        read(SAMPLES.replace("unit\n", "unit,field\n").replace("0.6,dS/m", "0.6,dS/m,South"), "");
    assertThat(codes(ranch)).contains("field-differs");
    assertThat(ranch.samples().get(0).field()).isEqualTo("north");
  }

  @Test
  void compositesInformTheFieldTheyName() {
    String text =
        """
        id,lon,lat,depth,method,ec,unit,field,sampled,no. of cores
        A,-153.005,30.002,0-30 cm,1:5,0.6,dS/m,,core,1
        C1,,,0-30 cm,paste,5,dS/m,SOUTH,composite,15
        C2,,,0-30 cm,paste,5,dS/m,nowhere,composite,15
        C3,,,0-30 cm,paste,5,dS/m,south,composite,0.5
        D,,,0-30 cm,1:5,0.6,dS/m,,core,1
        """;
    Ranch ranch = read(text, "");
    assertThat(ranch.samples())
        .extracting(Sample::field)
        .containsExactly("north", "south", "south");
    assertThat(ranch.samples().get(1).place()).isEmpty();
    assertThat(ranch.samples().get(1).extras().cores()).hasValue(15);
    assertThat(ranch.samples().get(2).extras().cores()).isEmpty();
    assertThat(codes(ranch)).contains("composite-without-field", "no-place", "impossible");
  }

  @Test
  void aCompositeOfAnotherFieldIsNotTakenAsOfTheOnlyOne() {
    String one =
        "{\"type\":\"Feature\",\"properties\":{\"field\":\"north\"},\"geometry\":{\"type\":\"Polygon\","
            + "\"coordinates\":[[[-153.01,30.0],[-153.0,30.0],[-153.0,30.005],[-153.01,30.0]]]}}";
    String text =
        """
        id,lon,lat,depth,method,ec,unit,field,sampled
        A,-153.001,30.001,0-30 cm,1:5,0.6,dS/m,,core
        C1,,,0-30 cm,paste,5,dS/m,,composite
        C2,,,0-30 cm,paste,5,dS/m,nowhere,composite
        """;
    Ranch ranch = RanchReader.read(job(one, text, ""));
    assertThat(ranch.samples()).extracting(Sample::id).containsExactly("A", "C1");
    assertThat(ranch.findings())
        .filteredOn(f -> f.code().id().equals("composite-without-field"))
        .singleElement()
        .satisfies(f -> assertThat(f.found()).contains("field 'nowhere'"));
  }

  @Test
  void metresNeedTheirSystem() {
    String text = "id,x,y,depth,method,ec,unit\nA,499700,3319000,0-30 cm,1:5,0.6,dS/m\n";
    assertThat(refused(FIELD, text, "")).hasMessageContaining("crs: EPSG:n");
    Ranch ranch = read(text, "crs: EPSG:32605\n");
    assertThat(ranch.samples().get(0).place().orElseThrow())
        .isEqualTo(new fieldsalt.geo.PlaceM(499700, 3319000));
    assertThat(refused(FIELD, text, "crs: EPSG:99999\n")).hasMessageContaining("99999");
  }

  @Test
  void aLocalSystemTakesEveryCoordinateAsMetres() {
    String square =
        "{\"type\":\"Feature\",\"properties\":{\"field\":\"a\"},\"geometry\":{\"type\":\"Polygon\","
            + "\"coordinates\":[[[0,0],[500,0],[500,500],[0,500],[0,0]]]}}";
    String text = "id,x,y,depth,method,ec,unit\nA,100,200,0-30 cm,1:5,0.6,dS/m\n";
    Ranch ranch = RanchReader.read(job(square, text, "crs: local\n"));
    assertThat(ranch.projection().isLocal()).isTrue();
    assertThat(ranch.fields().get(0).shapeM().getArea()).isEqualTo(250_000);
  }

  @Test
  void withoutFieldsTheWidenedHullOfTheSitesIsTheField() {
    Path samples = write("samples.csv", SAMPLES);
    JobDocument job = JobDocument.read(write("job.yaml", "samples: samples.csv\n"), List.of());
    Ranch ranch = RanchReader.readOrHull(job, samples);
    assertThat(ranch.fields()).hasSize(1);
    assertThat(ranch.samples()).hasSize(3);
    assertThat(codes(ranch)).containsExactly("hull");
    assertThat(catchThrowableOfType(InputProblem.class, () -> RanchReader.read(job)))
        .hasMessageContaining("no fields")
        .hasMessageContaining("--fields F");
  }

  @Test
  void pointsToHoldTheMapAgainstAreReadInTheRanchsProjection() {
    JobDocument job = job(FIELD, SAMPLES, "");
    Ranch ranch = RanchReader.read(job);
    Path points = write("p.csv", SAMPLES + "Q,-150,30.002,0-30 cm,1:5,0.6,dS/m\n");
    RanchReader.Points read = RanchReader.readPoints(job, points, ranch);
    assertThat(read.samples())
        .extracting(Sample::place)
        .containsExactlyElementsOf(ranch.samples().stream().map(Sample::place).toList());
    assertThat(read.findings()).extracting(f -> f.code().id()).containsExactly("outside-fields");
  }

  @Test
  void theSurveyIsCleanedAndSaysHow() {
    String survey =
        """
        lon,lat,eca_mS_m
        -153.005,30.002,80
        -153.005,30.002,100
        -153.004,30.002,-3
        -153.004,30.003,700
        -153.003,30.003,x
        """;
    write("survey.csv", survey);
    Ranch ranch = read(SAMPLES, "survey: survey.csv\n");
    assertThat(ranch.survey()).extracting(SurveyReading::ecaMsPerM).containsExactly(90.0, 700.0);
    assertThat(codes(ranch))
        .contains("survey-same-place", "survey-not-positive", "unusual", "survey-no-number");
    write("survey.csv", "lon,lat,eca_mS_m\n-153.005,30.002,0.8\n-153.004,30.002,1.1\n");
    assertThat(codes(read(SAMPLES, "survey: survey.csv\n"))).contains("survey-unit");
    write("survey.csv", "lon,lat,ECa (dS/m)\n-153.005,30.002,0.8\n-153.004,30.002,1.1\n");
    Ranch inDs = read(SAMPLES, "survey: survey.csv\n");
    assertThat(inDs.survey().get(0).ecaMsPerM()).isEqualTo(80);
    assertThat(codes(inDs)).doesNotContain("survey-unit");
    write("survey.csv", "lon,lat,eca_mS_m\n-153.005,30.002,0\n");
    assertThat(refused(FIELD, SAMPLES, "survey: survey.csv\n"))
        .hasMessageContaining("no usable reading");
  }

  @Test
  void aSurveyOfAnotherPlaceIsAFinding() {
    write("survey.csv", "lon,lat,eca_mS_m\n-152.005,30.002,80\n-152.004,30.002,110\n");
    assertThat(codes(read(SAMPLES, "survey: survey.csv\n"))).contains("survey-elsewhere");
  }

  @Test
  void aFieldOfAnUnlikelySizeIsAFinding() {
    String tiny = FIELD.replace("30.005", "30.00001").replace("29.995", "29.99001");
    String near = SAMPLES.replaceAll("30\\.00[123]", "30.00001");
    assertThat(
            codes(
                RanchReader.read(
                    job(
                        tiny.replace("-153.0,", "-153.009,"),
                        near.replaceAll("-153\\.00\\d", "-153.0095"),
                        ""))))
        .contains("field-size");
  }

  @Test
  void oneIdAtTwoPlacesIsAFinding() {
    Ranch ranch = read(SAMPLES.replace("B,", "a,"), "");
    assertThat(ranch.samples()).hasSize(3);
    assertThat(ranch.findings())
        .filteredOn(f -> f.code().id().equals("id-at-two-places"))
        .singleElement()
        .satisfies(f -> assertThat(f.where()).isEqualTo("samples.csv row 3"));
  }

  @Test
  void filesOfOneNameInTwoFoldersBothHaveTheirHash() throws IOException {
    Files.createDirectories(folder.resolve("b"));
    write("b/samples.csv", SAMPLES.replace("A,", "Z,"));
    write("fields.geojson", FIELD);
    write("samples.csv", SAMPLES);
    Ranch ranch =
        RanchReader.read(
            JobDocument.read(
                write(
                    "job.yaml", "fields: fields.geojson\nsamples: [samples.csv, b/samples.csv]\n"),
                List.of()));
    assertThat(ranch.hashes().keySet())
        .containsExactly("b/samples.csv", "fields.geojson", "job.yaml", "samples.csv");
  }

  @Test
  void withSeveralFilesARowIsConfirmedWithItsFile() {
    write("fields.geojson", FIELD);
    write("samples.csv", SAMPLES);
    write("b.csv", SAMPLES.replace("A,", "Z,").replace("0.6", "613"));
    String text = "fields: fields.geojson\nsamples: [samples.csv, b.csv]\n";
    Ranch without = RanchReader.read(JobDocument.read(write("job.yaml", text), List.of()));
    assertThat(without.findings())
        .filteredOn(f -> f.code().id().equals("unit-slip"))
        .singleElement()
        .satisfies(f -> assertThat(f.done()).contains("confirm: {\"b.csv row 2\": "));
    Ranch ranch =
        RanchReader.read(
            JobDocument.read(
                write("job.yaml", text + "confirm: {b.csv row 2: uS/cm}\n"), List.of()));
    assertThat(ranch.samples())
        .extracting(s -> s.ec().orElseThrow().dSPerM())
        .containsExactly(0.6, 0.7, 0.8, 0.613);
  }

  @Test
  void geoJsonSamplesAndSeveralFilesTogether() {
    write(
        "more.geojson",
        "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":{\"id\":\"G\",\"ec\":5.25,\"unit\":\"dS/m\",\"method\":\"paste\",\"depth\":\"0-30"
            + " cm\",\"lab\":null},"
            + "\"geometry\":{\"type\":\"Point\",\"coordinates\":[-153.002,30.002]}}]}");
    write("fields.geojson", FIELD);
    write("samples.csv", SAMPLES);
    JobDocument job =
        JobDocument.read(
            write("job.yaml", "fields: fields.geojson\nsamples: [samples.csv, more.geojson]\n"),
            List.of());
    Ranch ranch = RanchReader.read(job);
    assertThat(ranch.samples()).hasSize(4);
    assertThat(ranch.samples().get(3).source()).hasToString("more.geojson feature 1");
    assertThat(ranch.samples().get(3).ec().orElseThrow().dSPerM()).isEqualTo(5.25);
  }

  @ParameterizedTest
  @ValueSource(strings = {"old.xls", "report.pdf", "book.xlsx", "data.ods"})
  void filesOfOtherProgramsAreRefusedWithTheWayOut(String name) throws IOException {
    byte[] start =
        switch (name) {
          case "old.xls" -> new byte[] {(byte) 0xD0, (byte) 0xCF, 0x11, (byte) 0xE0, 1, 2};
          case "report.pdf" -> "%PDF-1.7".getBytes(StandardCharsets.US_ASCII);
          default -> new byte[] {'P', 'K', 3, 4, 0, 0, 0};
        };
    Path file = Files.write(folder.resolve(name), start);
    JobDocument job = JobDocument.ofSettings(folder, List.of());
    assertThat(
            catchThrowableOfType(
                InputProblem.class, () -> RanchReader.readTable(job, List.of(file))))
        .hasMessageContaining(name)
        .hasMessageContaining(".xlsx");
  }

  /**
   * Bytes at random and spoiled copies of sound files: an InputProblem or a result, nothing else.
   */
  @Test
  void nothingEverGivesAnythingButAProblemThatAPersonCanMend() throws IOException {
    Random random = new Random(7);
    List<byte[]> sound =
        List.of(
            FIELD.getBytes(StandardCharsets.UTF_8),
            SAMPLES.getBytes(StandardCharsets.UTF_8),
            Files.readAllBytes(BoundariesTest.resource("boundaries/web.shp")),
            Files.readAllBytes(BoundariesTest.resource("boundaries/nad.zip")),
            Files.readAllBytes(BoundariesTest.resource("sheets/04-workbook.xlsx")),
            Files.readAllBytes(BoundariesTest.resource("sheets/03-tabs.txt")),
            Files.readAllBytes(BoundariesTest.resource("sheets/03-sites.gpx")),
            JobTemplate.text().getBytes(StandardCharsets.UTF_8));
    for (int i = 0; i < 240; i++) {
      byte[] bytes = spoiled(sound.get(i % sound.size()), random, i);
      for (String key : List.of("fields", "samples", "sites", "survey")) {
        onlyProblems(bytes, key);
      }
      onlyAsJob(bytes);
    }
  }

  private static byte[] spoiled(byte[] sound, Random random, int i) {
    byte[] bytes = sound.clone();
    if (i % 5 == 0) {
      random.nextBytes(bytes);
      return bytes;
    }
    if (i % 5 == 1) {
      return java.util.Arrays.copyOf(bytes, random.nextInt(bytes.length));
    }
    for (int k = 0; k < 1 + random.nextInt(8); k++) {
      bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
    }
    return bytes;
  }

  private void onlyProblems(byte[] bytes, String key) throws IOException {
    Path spoiled = Files.write(folder.resolve("spoiled"), bytes);
    write("fields.geojson", FIELD);
    write("samples.csv", SAMPLES);
    JobDocument job =
        JobDocument.ofSettings(
            folder, List.of("fields=fields.geojson", "samples=samples.csv", key + "=" + spoiled));
    Throwable thrown = catchThrowable(() -> RanchReader.read(job));
    assertThat(thrown == null || thrown instanceof InputProblem).as("%s: %s", key, thrown).isTrue();
  }

  private void onlyAsJob(byte[] bytes) throws IOException {
    Path spoiled = Files.write(folder.resolve("spoiled.yaml"), bytes);
    Throwable thrown = catchThrowable(() -> JobDocument.read(spoiled, List.of()));
    assertThat(thrown == null || thrown instanceof InputProblem).as("job: %s", thrown).isTrue();
  }

  @Test
  void aHundredThousandRowsAreReadInSecondsAndLinearly() {
    secondsFor(25_000);
    double small = Math.min(secondsFor(25_000), secondsFor(25_000));
    double large = secondsFor(100_000);
    assertThat(large).isLessThan(10);
    // four times the rows; twice that is allowed for warming up and collecting garbage
    assertThat(large / small).isLessThan(8);
  }

  /** Processor time of this thread, so that other work on the machine does not count. */
  private double secondsFor(int rows) {
    StringBuilder text =
        new StringBuilder("id,lon,lat,depth,method,ec,unit,texture,lab,date,sar,clay_pct\n");
    for (int i = 0; i < rows; i++) {
      text.append('S').append(i).append(",-153.00").append(1000 + i % 8999).append(",30.00");
      text.append(1000 + i % 3999).append(",0-30 cm,1:5,").append(0.1 + (i % 900) / 100.0);
      text.append(",dS/m,clay loam,Lab A,2026-03-10,").append(i % 12).append(",31\n");
    }
    write("many.csv", text.toString());
    write("fields.geojson", FIELD);
    JobDocument job =
        JobDocument.ofSettings(folder, List.of("fields=fields.geojson", "samples=many.csv"));
    var clock = java.lang.management.ManagementFactory.getThreadMXBean();
    long start = clock.getCurrentThreadCpuTime();
    assertThat(RanchReader.read(job).samples()).hasSizeGreaterThan(rows / 2);
    return (clock.getCurrentThreadCpuTime() - start) / 1e9;
  }
}
