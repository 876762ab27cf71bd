package fieldsalt.read.field;

import fieldsalt.finding.Code;
import fieldsalt.finding.InputProblem;
import fieldsalt.finding.Place;
import fieldsalt.read.file.GeoFeature;
import fieldsalt.read.file.GeoJson;
import fieldsalt.read.file.GeoPackageFile;
import fieldsalt.read.file.InputFile;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.ShapeFile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

/** Features of a boundary file: GeoJSON, GeoPackage, Shapefile (also zipped). */
public final class BoundaryFile {
  private static final long MOST_BYTES = 1L << 29;

  private final Consumer<InputFile> seen;
  private final Notes notes;

  private BoundaryFile(Consumer<InputFile> seen, Notes notes) {
    this.seen = seen;
    this.notes = notes;
  }

  /**
   * Reads a file of any kind.
   *
   * @param seen receives the files read beside it
   */
  public static GeoFeature.Collection read(InputFile file, Consumer<InputFile> seen, Notes notes) {
    return new BoundaryFile(seen, notes).read(file);
  }

  private GeoFeature.Collection read(InputFile file) {
    if (GeoPackageFile.isOne(file)) {
      return GeoPackageFile.read(file);
    }
    if (ShapeFile.isOne(file)) {
      return shape(file, beside(file));
    }
    if (file.startsWith('P', 'K')) {
      return zipped(file);
    }
    if (GeoJson.isOne(file)) {
      return GeoJson.read(file);
    }
    boolean part = file.extension().matches("dbf|shx|prj|cpg");
    throw new InputProblem(
        file.name(),
        part
            ? "one of the files beside a Shapefile"
            : "a file that is not GeoJSON, GeoPackage or Shapefile",
        "field boundaries as polygons",
        part ? "Name the .shp file." : "Export the boundaries as GeoJSON.");
  }

  private List<InputFile> beside(InputFile shp) {
    String stem = stem(shp.name());
    Path folder = shp.path().toAbsolutePath().getParent();
    List<InputFile> parts = new ArrayList<>();
    for (String end : List.of(".dbf", ".DBF", ".prj", ".PRJ", ".cpg", ".CPG")) {
      Path path = folder.resolve(stem + end);
      if (Files.isRegularFile(path)) {
        InputFile part = InputFile.read(path);
        seen.accept(part);
        parts.add(part);
      }
    }
    return parts;
  }

  private GeoFeature.Collection zipped(InputFile file) {
    List<InputFile> parts = new ArrayList<>();
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(file.bytes()))) {
      long left = MOST_BYTES;
      for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
        byte[] bytes = zip.readNBytes((int) left);
        left -= bytes.length;
        if (left <= 0) {
          throw new IOException("too much in it");
        }
        String name = e.getName().substring(e.getName().lastIndexOf('/') + 1);
        parts.add(new InputFile(file.path(), name, bytes));
      }
    } catch (IOException | IllegalArgumentException e) {
      throw new InputProblem(
              file.name(),
              "a zip file that cannot be opened",
              "a zipped Shapefile",
              "Zip it again.")
          .because(e);
    }
    List<InputFile> shapes =
        parts.stream().filter(ShapeFile::isOne).filter(p -> p.extension().equals("shp")).toList();
    if (shapes.size() != 1) {
      throw new InputProblem(
          file.name(),
          shapes.size() + " Shapefiles in a zip file",
          "one .shp with its .dbf and .prj",
          "Zip the boundaries alone.");
    }
    String stem = stem(shapes.get(0).name());
    return shape(shapes.get(0), parts.stream().filter(p -> stem(p.name()).equals(stem)).toList());
  }

  private static String stem(String name) {
    int dot = name.lastIndexOf('.');
    return dot < 0 ? name : name.substring(0, dot);
  }

  private GeoFeature.Collection shape(InputFile shp, List<InputFile> parts) {
    Optional<InputFile> prj = part(parts, "prj");
    if (prj.isEmpty()) {
      notes.finding(
          Code.NO_PRJ,
          Place.file(shp.name()),
          "no .prj file beside it",
          "its coordinates are taken as WGS 84 longitude and latitude");
    }
    if (part(parts, "dbf").isEmpty()) {
      notes.finding(
          Code.NO_DBF,
          Place.file(shp.name()),
          "no .dbf file beside it",
          "the fields have no names");
    }
    return ShapeFile.read(
        shp,
        part(parts, "dbf"),
        part(parts, "cpg"),
        prj.map(p -> new String(p.bytes(), StandardCharsets.UTF_8).strip()));
  }

  private static Optional<InputFile> part(List<InputFile> parts, String extension) {
    return parts.stream().filter(p -> p.extension().equals(extension)).findFirst();
  }
}
