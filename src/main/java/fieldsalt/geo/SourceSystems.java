package fieldsalt.geo;

import fieldsalt.finding.InputProblem;
import java.text.ParseException;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.SingleCRS;
import org.geotools.api.referencing.datum.GeodeticDatum;
import org.geotools.api.referencing.operation.NoninvertibleTransformException;
import org.geotools.referencing.CRS;
import org.geotools.referencing.operation.transform.IdentityTransform;

/** Finds the system that a text names. */
final class SourceSystems {
  private static final Pattern CODE =
      Pattern.compile(
          "(?:urn:ogc:def:crs:)?(?:EPSG)?:*(?:[0-9.]*::?)?(\\d{4,6})", Pattern.CASE_INSENSITIVE);
  private static final Pattern LAST_ID =
      Pattern.compile("ID\\s*\\[\\s*\"EPSG\"\\s*,\\s*\"?(\\d+)\"?\\s*\\]\\s*\\]\\s*$");
  private static final Pattern WKT2 =
      Pattern.compile("^\\s*(PROJCRS|GEOGCRS|GEODCRS|BOUNDCRS|COMPOUNDCRS)\\b.*", Pattern.DOTALL);

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
    if (WKT2.matcher(text).matches() || text.indexOf('[') < 0) {
      throw notUnderstood(text, null);
    }
    return ofWkt(text);
  }

  static SourceSystem degrees() {
    return new SourceSystem("WGS 84", IdentityTransform.create(2), WaysToWgs84.same());
  }

  static SourceSystem ofCode(int code) {
    if (code == 4326) {
      return degrees();
    }
    if (Utm.isCode(code)) {
      return ofWkt(Utm.ofCode(code).wkt());
    }
    return of(Registry.decode(code));
  }

  private static SourceSystem ofWkt(String wkt) {
    try {
      return of(Wkt.parse(wkt), DatumTies::ofText);
    } catch (ParseException | ClassCastException e) {
      throw notUnderstood(wkt, e);
    }
  }

  static SourceSystem of(CoordinateReferenceSystem any) {
    return of(any, DatumTies::of);
  }

  private static SourceSystem of(
      CoordinateReferenceSystem any, Function<SingleCRS, WaysToWgs84> ties) {
    CoordinateReferenceSystem crs = CRS.getHorizontalCRS(any);
    if (!(crs instanceof SingleCRS single) || !(single.getDatum() instanceof GeodeticDatum)) {
      throw notUnderstood(any.getName().getCode(), null);
    }
    try {
      return new SourceSystem(crs.getName().getCode(), DatumDegrees.of(single), ties.apply(single));
    } catch (NoninvertibleTransformException e) {
      throw notUnderstood(crs.getName().getCode(), e);
    }
  }

  static InputProblem notUnderstood(String text, Exception why) {
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
