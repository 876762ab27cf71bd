package fieldsalt.cli;

import fieldsalt.geo.Projections;
import fieldsalt.geo.RanchProjection;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * An invented ranch of rectangles on clay loam in the open ocean, in metres from its south-west
 * corner, written as fields.geojson and samples.csv into a folder.
 */
final class TestRanch {
  static final RanchProjection UTM = Projections.utmFor(-153, 30);
  static final double WEST = 300_000;
  static final double SOUTH = 3_300_000;

  private final Path folder;
  private final List<String> fields = new ArrayList<>();
  private final StringBuilder samples = new StringBuilder();

  /**
   * @param columns of the samples that follow {@code id,lon,lat}
   */
  TestRanch(Path folder, String columns) {
    this.folder = folder;
    samples.append("id,lon,lat,").append(columns).append('\n');
  }

  /** A field from {@code east} metres on. */
  TestRanch field(String name, double east, double wide, double high) {
    fields.add(feature(name, east, wide, high));
    return this;
  }

  /** A field of which nobody told the texture. */
  TestRanch fieldOfUnknownTexture(String name, double east, double wide, double high) {
    fields.add(feature(name, east, wide, high).replace(",\"texture\":\"clay loam\"", ""));
    return this;
  }

  /** The field as GeoJSON. */
  static String feature(String name, double east, double wide, double high) {
    double[][] corners = {{0, 0}, {wide, 0}, {wide, high}, {0, high}, {0, 0}};
    List<String> ring = new ArrayList<>();
    for (double[] c : corners) {
      ring.add("[" + lonLat(east + c[0], c[1]) + "]");
    }
    return "{\"type\":\"Feature\",\"properties\":{\"field\":\""
        + name
        + "\",\"texture\":\"clay loam\"},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[["
        + String.join(",", ring)
        + "]]}}";
  }

  private static String lonLat(double x, double y) {
    double[] p = UTM.toLonLat(WEST + x, SOUTH + y);
    return String.format(Locale.ROOT, "%.8f,%.8f", p[0], p[1]);
  }

  /** A sample with an id of its own. */
  TestRanch sample(double x, double y, String rest, Object... values) {
    int n = (int) samples.chars().filter(c -> c == '\n').count() - 1;
    return line(
        String.format(Locale.ROOT, "S%03d,", n)
            + lonLat(x, y)
            + ","
            + String.format(Locale.ROOT, rest, values));
  }

  /** A line of the samples as it stands. */
  TestRanch line(String line) {
    samples.append(line).append('\n');
    return this;
  }

  void write() throws IOException {
    Files.createDirectories(folder);
    Files.writeString(
        folder.resolve("fields.geojson"),
        "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", fields) + "]}");
    Files.writeString(folder.resolve("samples.csv"), samples);
  }

  /** Maps it into the folder {@code out} within. */
  Run map(Object... more) throws IOException {
    write();
    List<Object> words = new ArrayList<>(List.of("map"));
    words.addAll(List.of("--fields", folder.resolve("fields.geojson")));
    words.addAll(List.of("--samples", folder.resolve("samples.csv")));
    words.addAll(List.of("-o", folder.resolve("out")));
    words.addAll(List.of(more));
    return Run.of(words.toArray());
  }
}
