package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Input that a person has to mend: exit 3, a message to act on, nothing written. */
class BadInputTest {
  private static final String SQUARE =
      "[[[-153.0,30.0],[-152.995,30.0],[-152.995,30.004],[-153.0,30.004],[-153.0,30.0]]]";

  @TempDir Path temp;
  private Path out;

  @BeforeEach
  void twoFieldsAndSixSites() throws IOException {
    out = temp.resolve("out");
    write("fields.geojson", fields(field("north", SQUARE)));
    write("samples.csv", header() + sites(6, "paste"));
    write("job.yaml", "fields: fields.geojson\nsamples: samples.csv\n");
  }

  private static String header() {
    return "id,lon,lat,depth_top_cm,depth_bottom_cm,method,ec,unit\n";
  }

  private static String sites(int n, String method) {
    StringBuilder rows = new StringBuilder();
    for (int i = 0; i < n; i++) {
      rows.append("S")
          .append(i)
          .append(",")
          .append(-152.9990 + 0.0007 * i)
          .append(",30.00")
          .append(1 + i % 3)
          .append(",0,90,")
          .append(method)
          .append(",")
          .append(2 + i % 4)
          .append(",dS/m\n");
    }
    return rows.toString();
  }

  private static String field(String name, String rings) {
    return "{\"type\":\"Feature\",\"properties\":{\"field\":\""
        + name
        + "\"},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":"
        + rings
        + "}}";
  }

  private static String fields(String... features) {
    return "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", features) + "]}";
  }

  private void write(String name, String text) throws IOException {
    Files.writeString(temp.resolve(name), text);
  }

  private Run map(Object... more) {
    Object[] args = new Object[4 + more.length];
    args[0] = "map";
    args[1] = temp.resolve("job.yaml");
    args[2] = "-o";
    args[3] = out;
    System.arraycopy(more, 0, args, 4, more.length);
    return Run.of(args);
  }

  private void refused(Run run, String... words) {
    assertThat(run.code()).as(run.err()).isEqualTo(Exit.INPUT);
    assertThat(run.err()).contains(words).contains("do: ").doesNotContain("Exception");
    assertThat(out).doesNotExist();
  }

  @Test
  void theCaseItselfIsSound() {
    assertThat(map().code()).isZero();
    assertThat(out.resolve("report.html")).exists();
  }

  @Test
  void unknownJobKeyNamesTheNearest() throws IOException {
    write("job.yaml", "fields: fields.geojson\nsamples: samples.csv\nwater: {ec-ds-n: 1}\n");
    refused(map(), "ec-ds-n", "ec-dS-m");
  }

  @Test
  void missingFile() throws IOException {
    write("job.yaml", "fields: fields.geojson\nsamples: sampels.csv\n");
    refused(map(), "sampels.csv");
  }

  @Test
  void emptyCsv() throws IOException {
    write("samples.csv", "");
    refused(map(), "samples.csv");
  }

  @Test
  void polygonThatCrossesItself() throws IOException {
    write(
        "fields.geojson",
        fields(
            field(
                "bow",
                "[[[-153.0,30.0],[-152.995,30.004],[-152.995,30.0],[-153.0,30.004],[-153.0,30.0]]]")));
    refused(map(), "bow");
  }

  @Test
  void theOnlyFieldHasTwoSites() throws IOException {
    write("samples.csv", header() + sites(2, "paste"));
    refused(map(), "north", "2 sites", "at least 3");
  }

  @Test
  void noUsableEc() throws IOException {
    write("samples.csv", header() + sites(4, "paste").replaceAll(",[2-5],dS", ",lost,dS"));
    refused(map(), "lost");
  }

  @Test
  void rowsWithoutAnyMethod() throws IOException {
    write("samples.csv", header() + sites(6, ""));
    refused(map(), "method", "1:5");
  }

  @Test
  void unknownCrop() {
    Run run = map("--set", "crop=alfalfla");
    assertThat(run.code()).as("a crop nobody knows stops nothing").isEqualTo(Exit.DONE);
    assertThat(run.err()).contains("crop-unknown", "alfalfla", "Nearest: Alfalfa / lucerne");
  }

  @Test
  void everythingWrongIsToldAtOnce() throws IOException {
    write("samples.csv", "");
    write("job.yaml", "fields: nowhere.geojson\nsamples: samples.csv\n");
    refused(map(), "nowhere.geojson", "samples.csv");
  }

  @Test
  void oneTextInEcIsAFinding() throws IOException {
    write("samples.csv", header() + sites(6, "paste").replaceFirst(",2,dS/m", ",spilt,dS/m"));
    Run run = map();
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.err()).contains("spilt").contains("row 2");
  }

  @Test
  void oneOfTwoFieldsHasTwoSites() throws IOException {
    String east = SQUARE.replace("-153.0", "-152.990").replace("-152.995", "-152.985");
    write("fields.geojson", fields(field("north", SQUARE), field("east", east)));
    write(
        "samples.csv",
        header()
            + sites(6, "paste")
            + "E1,-152.988,30.001,0,90,paste,3,dS/m\nE2,-152.987,30.002,0,90,paste,4,dS/m\n");
    Run run = map();
    assertThat(run.code()).as(run.err()).isEqualTo(Exit.SOME_FIELDS);
    assertThat(run.err()).contains("Fields left out: east");
    assertThat(out.resolve("zones.geojson")).content().contains("north").doesNotContain("east-");
  }

  @Test
  void aFieldWithoutAnySiteIsAFinding() throws IOException {
    String east = SQUARE.replace("-153.0", "-152.990").replace("-152.995", "-152.985");
    write("fields.geojson", fields(field("north", SQUARE), field("east", east)));
    Run run = map();
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.err()).contains("east").contains("no site");
  }

  @Test
  void aFolderOfOthersIsNotTouchedWithoutForce() throws IOException {
    Files.createDirectory(out);
    Files.writeString(out.resolve("mine.txt"), "keep");
    Run run = map();
    assertThat(run.code()).isEqualTo(Exit.INPUT);
    assertThat(run.err()).contains("mine.txt").contains("--force");
    assertThat(out.toFile().list()).containsExactly("mine.txt");
    assertThat(map("--force").code()).isZero();
    assertThat(out.resolve("mine.txt")).content().isEqualTo("keep");
    assertThat(map().code()).isZero();
  }

  @Test
  void aFailureLeavesAnEarlierResultAlone() throws IOException {
    assertThat(map().code()).isZero();
    byte[] before = Files.readAllBytes(out.resolve("zones.geojson"));
    write("samples.csv", "");
    assertThat(map().code()).isEqualTo(Exit.INPUT);
    assertThat(Files.readAllBytes(out.resolve("zones.geojson"))).isEqualTo(before);
  }

  @Test
  void resultsThatCouldNotBePrintedAreNoSuccess() {
    assertThat(printInto("No space left on device")).startsWith("3 ").contains("not complete");
    assertThat(printInto("Broken pipe")).as("as in: fieldsalt job | head").isEqualTo("0 ");
  }

  private static String printInto(String failure) {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    OutputStream full =
        new OutputStream() {
          @Override
          public void write(int b) throws IOException {
            throw new IOException(failure);
          }
        };
    int code =
        Main.run(
            new String[] {"job"}, full, new PrintStream(err, true, StandardCharsets.UTF_8), false);
    return code + " " + err.toString(StandardCharsets.UTF_8);
  }

  /** What was wrong stands last but one, not above a screen of options. */
  @Test
  void wrongUsageIsToldInFewLines() {
    assertThat(Run.of("map", "--qiet").err().lines().toList())
        .hasSizeBetween(2, 4)
        .first()
        .asString()
        .contains("--qiet");
    assertThat(Run.of("map", "--qiet").err()).contains("fieldsalt map --help");
    assertThat(Run.of("map", "a\0b.yaml").err()).contains("LC_ALL");
  }

  @Test
  void wrongUsage() {
    assertThat(Run.of("map").code()).isEqualTo(Exit.USAGE);
    assertThat(Run.of("map", "--nonsense").code()).isEqualTo(Exit.USAGE);
    assertThat(Run.of("nonsense").code()).isEqualTo(Exit.USAGE);
    assertThat(Run.of().code()).isEqualTo(Exit.USAGE);
    assertThat(Run.of("map", "a.yaml", "--crop", "barley").err()).contains("not both");
  }

  @Test
  void traceOnlyWithDebug() throws IOException {
    write("samples.csv", "");
    assertThat(map().err()).doesNotContain("\tat ");
    assertThat(map("--debug").err()).contains("\tat ");
  }

  /** What is missing, why, and how many cores to take; without a survey nothing is said of one. */
  @Test
  void aSurveyWithoutCoresIsNotAMap() throws IOException {
    write("survey.csv", "lon,lat,eca_mS_m\n-152.998,30.001,80\n-152.997,30.002,120\n");
    write("eca.yaml", "fields: fields.geojson\nsurvey: survey.csv\n");
    Run run = Run.of("map", temp.resolve("eca.yaml"), "-o", out);
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err())
        .contains("no samples", "cannot be turned into ECe without cores: take 12 to 20");
    assertThat(out).doesNotExist();
    write("none.yaml", "fields: fields.geojson\n");
    assertThat(Run.of("map", temp.resolve("none.yaml"), "-o", out).err())
        .contains("no samples")
        .doesNotContain("survey");
  }
}
