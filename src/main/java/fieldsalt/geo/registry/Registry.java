package fieldsalt.geo.registry;

import fieldsalt.finding.InputProblem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.referencing.CRS;

/**
 * The EPSG registry that comes with GeoTools: a database that unpacks itself once into a cache
 * folder of the user. A damaged copy (a killed run, a full disk) is deleted and unpacked anew.
 */
final class Registry {
  private static final int WEB_MERCATOR = 3857;
  private static final String FOLDER_PROPERTY = "EPSG-HSQL.directory";

  private Registry() {}

  /** Says where the database goes, unless someone already has. */
  static synchronized void prepare() {
    Silence.begin();
    if (System.getProperty(FOLDER_PROPERTY) == null) {
      System.setProperty(FOLDER_PROPERTY, cacheFolder().toString());
    }
  }

  private static Path cacheFolder() {
    String xdg = System.getenv("XDG_CACHE_HOME");
    Path base =
        xdg == null || xdg.isBlank()
            ? Path.of(System.getProperty("user.home"), ".cache")
            : Path.of(xdg);
    Path folder = base.resolve("fieldsalt").resolve("epsg-33.1");
    try {
      Path made = Files.createDirectories(folder);
      return isOwn(made) ? made : ownTemporary();
    } catch (IOException e) {
      return ownTemporary();
    }
  }

  /** A folder that someone else made may hold what someone else put there. */
  private static boolean isOwn(Path folder) throws IOException {
    String user = System.getProperty("user.name", "");
    return Files.getOwner(folder).getName().endsWith(user) && Files.isWritable(folder);
  }

  /** A new folder that only this user may enter, at a place that nobody can guess. */
  private static Path ownTemporary() {
    try {
      return Files.createTempDirectory("fieldsalt-epsg-");
    } catch (IOException e) {
      throw new InputProblem(
          "temporary folder " + System.getProperty("java.io.tmpdir"),
          "nothing can be written there, nor in the folder of this user",
          "a folder that this user may write to",
          "Set XDG_CACHE_HOME to one, or free some room.");
    }
  }

  /** The system with this code, easting or longitude first. */
  static synchronized CoordinateReferenceSystem decode(int code) {
    prepare();
    try {
      return byCode(code);
    } catch (FactoryException e) {
      if (isSound()) {
        throw unknown(code, e);
      }
      return decodeAnew(code);
    }
  }

  private static CoordinateReferenceSystem byCode(int code) throws FactoryException {
    try {
      return CRS.decode("EPSG:" + code, true);
    } catch (LinkageError e) {
      throw new FactoryException("a projection that is not in this program", e);
    }
  }

  /** A damaged copy knows no code at all. */
  private static boolean isSound() {
    try {
      return byCode(WEB_MERCATOR) != null;
    } catch (FactoryException e) {
      return false;
    }
  }

  private static CoordinateReferenceSystem decodeAnew(int code) {
    CRS.reset("all");
    deleteDatabase();
    try {
      return byCode(code);
    } catch (FactoryException e) {
      if (isSound()) {
        throw unknown(code, e);
      }
      throw broken(code, e);
    }
  }

  private static void deleteDatabase() {
    Path folder = Path.of(System.getProperty(FOLDER_PROPERTY));
    try (Stream<Path> inside = Files.walk(folder)) {
      List<Path> deepestFirst = inside.sorted(Comparator.reverseOrder()).toList();
      for (Path path : deepestFirst) {
        if (!path.equals(folder)) {
          Files.deleteIfExists(path);
        }
      }
    } catch (IOException e) {
      System.setProperty(FOLDER_PROPERTY, ownTemporary().toString());
    }
  }

  private static InputProblem unknown(int code, Exception why) {
    InputProblem problem =
        new InputProblem(
            "coordinate system",
            "EPSG:" + code,
            "a system of the EPSG registry whose projection this program has",
            "Look up the code of the system the coordinates were taken in; if it is this one save"
                + " the file in WGS 84 (EPSG:4326).");
    problem.initCause(why);
    return problem;
  }

  private static InputProblem broken(int code, Exception why) {
    InputProblem problem =
        new InputProblem(
            "coordinate system EPSG:" + code,
            "a registry of coordinate systems that cannot be opened in "
                + System.getProperty(FOLDER_PROPERTY),
            "a folder with 40 MB free that this user may write to",
            "Free some space there and run again, or save the file in WGS 84 (EPSG:4326).");
    problem.initCause(why);
    return problem;
  }
}
