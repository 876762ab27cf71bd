package fieldsalt.geo;

import fieldsalt.finding.InputProblem;
import java.text.ParseException;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.geotools.api.referencing.ReferenceIdentifier;
import org.geotools.api.referencing.crs.CompoundCRS;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.crs.SingleCRS;
import org.geotools.api.referencing.datum.GeodeticDatum;
import org.geotools.api.referencing.operation.NoninvertibleTransformException;
import org.geotools.referencing.CRS;

/** Finds the system that a text names. */
final class SourceSystems {
  private static final Pattern CODE =
      Pattern.compile(
          "(?:urn:ogc:def:crs:)?(?:EPSG)?:*(?:[0-9.]*::?)?(\\d{4,6})", Pattern.CASE_INSENSITIVE);
  private static final Pattern LAST_ID =
      Pattern.compile("ID\\s*\\[\\s*\"EPSG\"\\s*,\\s*\"?(\\d+)\"?\\s*\\]\\s*\\]\\s*$");

  private static final Set<String> WRONG_METHODS =
      Set.of(
          "Equal Earth",
          "Cylindrical_Equal_Area",
          "Lambert Cylindrical Equal Area (Spherical)",
          "World_Van_der_Grinten_I",
          "Gnomonic",
          "Robinson");

  /** Its series are good near the meridian only. */
  private static final Set<String> CASSINI_OF_THE_WORLD = Set.of("World_Cassini", "Sphere_Cassini");

  private static final Map<String, SourceSystem> KNOWN = new ConcurrentHashMap<>();

  private SourceSystems() {}

  static SourceSystem of(String wktOrCode) {
    return KNOWN.computeIfAbsent(wktOrCode.strip(), SourceSystems::read);
  }

  private static SourceSystem read(String text) {
    Matcher code = CODE.matcher(text);
    if (code.matches()) {
      return ofCode(Integer.parseInt(code.group(1)));
    }
    if (text.toUpperCase(Locale.ROOT).endsWith("CRS84")) {
      return degrees();
    }
    Matcher id = LAST_ID.matcher(text);
    if (id.find()) {
      return ofCode(Integer.parseInt(id.group(1)));
    }
    if (text.indexOf('[') < 0 && text.indexOf('(') < 0) {
      throw notUnderstood(text, null);
    }
    return ofWkt(text);
  }

  static SourceSystem degrees() {
    return new SourceSystem("WGS 84", DatumDegrees.Way.PLAIN, WaysToWgs84.same());
  }

  static SourceSystem ofCode(int code) {
    if (code == 4326) {
      return degrees();
    }
    if (Utm.isCode(code)) {
      return ofWkt(Utm.ofCode(code).wkt());
    }
    return written(code).map(SourceSystems::read).orElseGet(() -> registered(code));
  }

  /** The registry's; of a system with heights that of its map, decoded by itself: east first. */
  private static SourceSystem registered(int code) {
    CoordinateReferenceSystem crs = Registry.decode(code);
    if (crs instanceof CompoundCRS compound) {
      for (ReferenceIdentifier id : CRS.getHorizontalCRS(compound).getIdentifiers()) {
        return ofCode(Integer.parseInt(id.getCode()));
      }
    }
    return of(crs);
  }

  /** The text, or another code, of a system that the registry cannot build. */
  private static Optional<String> written(int code) {
    return GeoTable.rows("systems.csv").stream()
        .filter(row -> row[0].equals(Integer.toString(code)))
        .map(row -> row[1])
        .findFirst();
  }

  private static SourceSystem ofWkt(String wkt) {
    try {
      WktNode node = Wkt.horizontal(wkt);
      Optional<GridToDegrees> own = OwnProjections.of(node);
      return own.isPresent() ? ofOwn(node, own.get()) : of(Wkt.parse(node), DatumTies::ofText);
    } catch (InputProblem e) {
      throw e;
    } catch (ParseException | RuntimeException | LinkageError e) {
      throw notUnderstood(wkt, e);
    }
  }

  private static SourceSystem ofOwn(WktNode projected, GridToDegrees projection)
      throws ParseException {
    double metres = projected.child("UNIT").orElseThrow().number(1);
    SingleCRS base = (SingleCRS) Wkt.parse(projected.child("GEOGCS").orElseThrow());
    double meridian = DatumDegrees.meridian(base);
    return new SourceSystem(
        projected.name(),
        DatumDegrees.Way.back(
            (x, y) -> {
              double[] degrees = projection.degrees(x * metres, y * metres);
              return new double[] {degrees[0] + meridian, degrees[1]};
            }),
        DatumTies.ofText(base));
  }

  static SourceSystem of(CoordinateReferenceSystem any) {
    return of(any, DatumTies::of);
  }

  private static SourceSystem of(
      CoordinateReferenceSystem any, Function<SingleCRS, WaysToWgs84> ties) {
    CoordinateReferenceSystem crs = CRS.getHorizontalCRS(any);
    if (!(crs instanceof SingleCRS single)
        || !(single.getDatum() instanceof GeodeticDatum)
        || isWrongHere(single)) {
      throw notUnderstood(any.getName().getCode(), null);
    }
    try {
      return new SourceSystem(crs.getName().getCode(), DatumDegrees.of(single), ties.apply(single));
    } catch (NoninvertibleTransformException e) {
      throw notUnderstood(crs.getName().getCode(), e);
    }
  }

  /** Projections that GeoTools 33.1 places metres to kilometres from where PROJ 9.1.1 does. */
  private static boolean isWrongHere(SingleCRS crs) {
    return CASSINI_OF_THE_WORLD.contains(crs.getName().getCode())
        || (crs instanceof ProjectedCRS projected
            && WRONG_METHODS.contains(
                projected.getConversionFromBase().getMethod().getName().getCode()));
  }

  static InputProblem notUnderstood(String text, Throwable why) {
    String shown = text.length() > 80 ? text.substring(0, 80) + "..." : text;
    InputProblem problem =
        new InputProblem(
            "coordinate system",
            shown.isBlank() ? "nothing" : shown,
            "EPSG:n, local, or the text of a .prj file",
            "Look up the EPSG code of the system the coordinates were taken in, or save the file in"
                + " WGS 84 (EPSG:4326).");
    if (why != null) {
      problem.initCause(why);
    }
    return problem;
  }
}
