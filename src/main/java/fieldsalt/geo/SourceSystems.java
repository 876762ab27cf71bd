package fieldsalt.geo;

import fieldsalt.finding.InputProblem;
import fieldsalt.geo.datum.GeoTable;
import fieldsalt.geo.projection.TiedGrid;
import fieldsalt.geo.projection.Wgs84;
import fieldsalt.geo.registry.LibrarySystems;
import fieldsalt.geo.text.Wkt;
import fieldsalt.geo.text.WktNode;
import java.text.ParseException;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds the system that a text names. WGS 84 in degrees or UTM needs no coordinate library; only
 * other systems load it.
 */
final class SourceSystems {
  private static final Pattern CODE =
      Pattern.compile(
          "(?:urn:ogc:def:crs:)?(?:EPSG)?:*(?:[0-9.]*::?)?(\\d{4,6})", Pattern.CASE_INSENSITIVE);
  private static final Pattern LAST_ID =
      Pattern.compile("ID\\s*\\[\\s*\"EPSG\"\\s*,\\s*\"?(\\d+)\"?\\s*\\]\\s*\\]\\s*$");

  private static final Map<String, SourceSystem> KNOWN = new ConcurrentHashMap<>();

  private SourceSystems() {}

  static SourceSystem of(String wktOrCode) {
    return KNOWN.computeIfAbsent(wktOrCode.strip(), text -> new SourceSystem(read(text)));
  }

  private static TiedGrid read(String text) {
    Matcher code = CODE.matcher(text);
    if (code.matches()) {
      return ofCode(Integer.parseInt(code.group(1)));
    }
    if (text.toUpperCase(Locale.ROOT).endsWith("CRS84")) {
      return Wgs84.degrees();
    }
    Matcher id = LAST_ID.matcher(text);
    if (id.find()) {
      return ofCode(Integer.parseInt(id.group(1)));
    }
    return ofText(text);
  }

  private static TiedGrid ofCode(int code) {
    Optional<TiedGrid> known = Wgs84.ofCode(code).or(() -> written(code).map(SourceSystems::read));
    return known.orElseGet(() -> registered(code));
  }

  /** The registry's; of a system with heights that of its map, decoded by itself: east first. */
  private static TiedGrid registered(int code) {
    OptionalInt map = LibrarySystems.mapOf(code);
    return map.isPresent() ? ofCode(map.getAsInt()) : LibrarySystems.ofCode(code);
  }

  /** The text, or another code, of a system that the registry cannot build. */
  private static Optional<String> written(int code) {
    return GeoTable.rows("systems.csv").stream()
        .filter(row -> row[0].equals(Integer.toString(code)))
        .map(row -> row[1])
        .findFirst();
  }

  private static TiedGrid ofText(String text) {
    try {
      WktNode node = Wkt.horizontal(text);
      return Wgs84.ofText(node).orElseGet(() -> LibrarySystems.ofText(node));
    } catch (InputProblem e) {
      throw e;
    } catch (ParseException | RuntimeException e) {
      throw notUnderstood(text, e);
    }
  }

  private static InputProblem notUnderstood(String text, Throwable why) {
    String shown = text.length() > 80 ? text.substring(0, 80) + "..." : text;
    InputProblem problem =
        new InputProblem(
            "coordinate system",
            shown.isBlank() ? "nothing" : shown,
            "EPSG:n, local, or the text of a .prj file",
            "Look up the EPSG code of the system the coordinates were taken in, or save the file in"
                + " WGS 84 (EPSG:4326).");
    problem.initCause(why);
    return problem;
  }
}
