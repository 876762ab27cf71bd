package fieldsalt.geo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A ranch in degrees or in UTM of WGS 84 loads no class of the coordinate library. */
class CommonWayTest {
  private static final String LIBRARY =
      ".*\\b(org\\.geotools|org\\.opengis|org\\.hsqldb|javax\\.measure|si\\.uom|it\\.geosolutions"
          + "|javax\\.media\\.jai)\\..*";
  private static final Path SMALL = Path.of("sample-fields/small");
  @TempDir Path dir;

  /** Prints where each of some systems has a place. */
  static final class Ask {
    private Ask() {}

    public static void main(String[] systems) {
      for (String system : systems) {
        SourceSystem source = Projections.source(system);
        double[] lonLat = source.toLonLat(481295.769957, 3640218.755302);
        System.out.printf(Locale.ROOT, "%.9f %.9f%n", lonLat[0], lonLat[1]);
        double[] degrees = Projections.source(DEGREES).toLonLat(lonLat[0], lonLat[1]);
        System.out.println(degrees[0] == lonLat[0] && degrees[1] == lonLat[1]);
      }
    }
  }

  private static final String DEGREES =
      "GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137.0,"
          + "298.257223563]],PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]";

  private String run(String... command) throws IOException, InterruptedException {
    List<String> java =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.awt.headless=true",
                "-Xlog:class+load:file=" + dir.resolve("classes.txt"),
                "-cp",
                System.getProperty("java.class.path")));
    java.addAll(List.of(command));
    Path said = dir.resolve("said.txt");
    Process process =
        new ProcessBuilder(java).redirectErrorStream(true).redirectOutput(said.toFile()).start();
    assertThat(process.waitFor(300, TimeUnit.SECONDS)).isTrue();
    String text = Files.readString(said, StandardCharsets.UTF_8);
    assertThat(process.exitValue()).as(text).isZero();
    return text;
  }

  private List<String> loadedOfTheLibrary() throws IOException {
    List<String> loaded = Files.readAllLines(dir.resolve("classes.txt"));
    assertThat(loaded).anyMatch(line -> line.contains(" " + Projections.class.getName() + " "));
    return loaded.stream().filter(line -> line.matches(LIBRARY)).toList();
  }

  private void map(Path job) throws IOException, InterruptedException {
    Path out = dir.resolve("out");
    run("fieldsalt.cli.Main", "map", job.toString(), "-o", out.toString());
    for (String file : List.of("ece.tif", "fieldsalt.gpkg", "zones.prj", "TASKDATA.zip")) {
      assertThat(out.resolve(file)).isNotEmptyFile();
    }
    assertThat(loadedOfTheLibrary()).isEmpty();
  }

  @Test
  void aJobInDegrees() throws Exception {
    map(SMALL.resolve("job.yaml"));
  }

  /** The small sample in its zone, as GeoJSON of its time and as a table with x and y. */
  @Test
  void aJobInUtm() throws Exception {
    RanchProjection utm = Projections.utmFor(-153, 30);
    String fields = Files.readString(SMALL.resolve("fields.geojson"));
    Files.writeString(
        dir.resolve("fields.geojson"),
        inMetres(fields, utm)
            .replaceFirst(
                "\\{",
                "{\"crs\":{\"type\":\"name\",\"properties\":{\"name\":"
                    + "\"urn:ogc:def:crs:EPSG::32605\"}},"));
    StringBuilder samples = new StringBuilder("id,x,y,ec\n");
    for (String line : Files.readAllLines(SMALL.resolve("samples.geojson"))) {
      if (line.contains("\"id\"")) {
        samples.append(
            inMetres(line, utm)
                .replaceAll(
                    ".*\"id\":\"(\\w+)\",\"ec\":([0-9.]+).*\\[([0-9.]+),([0-9.]+)\\].*",
                    "$1,$3,$4,$2\n"));
      }
    }
    Files.writeString(dir.resolve("samples.csv"), samples);
    Files.writeString(
        dir.resolve("job.yaml"),
        Files.readString(SMALL.resolve("job.yaml")).replace("samples.geojson", "samples.csv")
            + "crs: EPSG:32605\n");
    map(dir.resolve("job.yaml"));
  }

  private static String inMetres(String geojson, RanchProjection utm) {
    return java.util.regex.Pattern.compile("\\[(-[0-9.]+),([0-9.]+)\\]")
        .matcher(geojson)
        .replaceAll(
            pair -> {
              PlaceM at =
                  utm.toMetres(
                      Double.parseDouble(pair.group(1)), Double.parseDouble(pair.group(2)));
              return String.format(Locale.ROOT, "[%.3f,%.3f]", at.xM(), at.yM());
            });
  }

  /** By code, and by what programs write into .prj files and GeoPackages. */
  @Test
  void systemsOfWgs84InAnySpelling() throws Exception {
    RanchProjection utm = Projections.utmFor(-111, 33);
    String said =
        run(
            Ask.class.getName(),
            "EPSG:32612",
            utm.esriWkt(),
            utm.wkt(),
            "PROJCRS[\"WGS 84 / UTM zone 12N\",ID[\"EPSG\",32612]]");
    assertThat(said.lines().distinct()).containsExactly("-111.200000000 32.900000000", "true");
    assertThat(said.lines()).hasSize(8);
    assertThat(loadedOfTheLibrary()).isEmpty();
  }

  /** What is nearly so goes to the library: what this class looks for is there. */
  @Test
  void anotherScaleIsAnotherSystem() throws Exception {
    String text = Projections.utmFor(-111, 33).esriWkt().replace("0.9996", "0.9999");
    String said = run(Ask.class.getName(), text);
    assertThat(said).doesNotStartWith("-111.200000000 32.900000000").contains("true");
    assertThat(loadedOfTheLibrary()).isNotEmpty();
  }
}
