package fieldsalt.geo;

import fieldsalt.finding.InputProblem;
import java.text.ParseException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.EngineeringCRS;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.crs.SingleCRS;
import org.geotools.api.referencing.datum.GeodeticDatum;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import org.geotools.referencing.operation.transform.ConcatenatedTransform;
import org.geotools.referencing.operation.transform.IdentityTransform;
import org.locationtech.jts.geom.Envelope;

/** Finds the system that a text names. */
final class SourceSystems {
  private static final Pattern CODE =
      Pattern.compile(
          "(?:urn:ogc:def:crs:)?(?:EPSG)?:*(?:[0-9.]*::?)?(\\d{4,6})", Pattern.CASE_INSENSITIVE);
  private static final Pattern LAST_ID =
      Pattern.compile("ID\\s*\\[\\s*\"EPSG\"\\s*,\\s*\"?(\\d+)\"?\\s*\\]\\s*\\]\\s*$");
  private static final Pattern WKT2 =
      Pattern.compile("^\\s*(PROJCRS|GEOGCRS|GEODCRS|BOUNDCRS|COMPOUNDCRS)\\b.*", Pattern.DOTALL);

  /** Datums within about two metres of WGS 84: taken as equal where the text gives no shift. */
  private static final List<String> NEAR_WGS84 =
      List.of(
          "WGS_1984",
          "WGS84",
          "NORTH_AMERICAN_1983",
          "NORTH_AMERICAN_DATUM_1983",
          "NAD83",
          "ETRS_1989",
          "ETRS89",
          "ETRF2000",
          "EUROPEAN_TERRESTRIAL_REFERENCE_SYSTEM_1989",
          "GDA_1994",
          "GEOCENTRIC_DATUM_OF_AUSTRALIA_1994",
          "GDA2020",
          "GEOCENTRIC_DATUM_OF_AUSTRALIA_2020",
          "NZGD_2000",
          "NEW_ZEALAND_GEODETIC_DATUM_2000",
          "SIRGAS_2000",
          "SIRGAS",
          "SISTEMA_DE_REFERENCIA_GEOCENTRICO_PARA_LAS_AMERICAS_2000",
          "POSGAR",
          "MEXICO_ITRF",
          "HARTEBEESTHOEK94",
          "HARTEBEESTHOEK_1994",
          "JGD_2000",
          "JGD_2011",
          "CHINA_2000",
          "CGCS2000",
          "ITRF",
          "WGS_72",
          "MAGNA",
          "SIRGAS-CHILE",
          "MOLDREF99",
          "IGM95",
          "RGF");

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
    return new SourceSystem("WGS 84", IdentityTransform.create(2), false, new Envelope());
  }

  static SourceSystem ofCode(int code) {
    if (code == 4326) {
      return degrees();
    }
    if (Utm.isCode(code)) {
      return ofWkt(Utm.ofCode(code).wkt());
    }
    return system(Registry.decode(code));
  }

  private static SourceSystem ofWkt(String wkt) {
    try {
      return system(Wkt.parse(wkt));
    } catch (ParseException | ClassCastException e) {
      throw notUnderstood(wkt, e);
    }
  }

  static SourceSystem of(CoordinateReferenceSystem crs) {
    return system(crs);
  }

  private static SourceSystem system(CoordinateReferenceSystem any) {
    CoordinateReferenceSystem crs = CRS.getHorizontalCRS(any);
    if (!(crs instanceof SingleCRS single) || crs instanceof EngineeringCRS) {
      throw notUnderstood(any.getName().getCode(), null);
    }
    String name = crs.getName().getCode();
    if (isPlainWgs84(single)) {
      return new SourceSystem(name, conversion(single), false, new Envelope());
    }
    return shifted(single, name);
  }

  private static boolean isPlainWgs84(SingleCRS crs) {
    return matchesName(crs, List.of("WGS_1984", "WGS84"))
        && (crs instanceof ProjectedCRS projected
            ? isDegreesFromGreenwich(projected.getBaseCRS())
            : isDegreesFromGreenwich(crs));
  }

  private static boolean isDegreesFromGreenwich(CoordinateReferenceSystem base) {
    return CRS.equalsIgnoreMetadata(
        base.getCoordinateSystem(), DefaultGeographicCRS.WGS84.getCoordinateSystem());
  }

  private static MathTransform conversion(SingleCRS crs) {
    try {
      return crs instanceof ProjectedCRS projected
          ? projected.getConversionFromBase().getMathTransform().inverse()
          : IdentityTransform.create(2);
    } catch (org.geotools.api.referencing.operation.NoninvertibleTransformException e) {
      throw notUnderstood(crs.getName().getCode(), e);
    }
  }

  private static SourceSystem shifted(SingleCRS crs, String name) {
    Registry.prepare();
    try {
      return new SourceSystem(
          name, CRS.findMathTransform(crs, DefaultGeographicCRS.WGS84), false, ShiftRegion.of(crs));
    } catch (FactoryException e) {
      return withoutShift(crs, name, e);
    }
  }

  private static SourceSystem withoutShift(SingleCRS crs, String name, FactoryException why) {
    OptionalInt known = NamedDatum.code(crs.getDatum().getName().getCode());
    if (known.isPresent() && isFromGreenwich(crs)) {
      return byRegistry(crs, name, Registry.decode(known.getAsInt()));
    }
    if (!matchesName(crs, NEAR_WGS84)) {
      throw noTie(crs, why);
    }
    try {
      return new SourceSystem(
          name, CRS.findMathTransform(crs, DefaultGeographicCRS.WGS84, true), true, new Envelope());
    } catch (FactoryException e) {
      throw noTie(crs, e);
    }
  }

  /** The file's own projection, then the shift that the registry has for its datum. */
  private static SourceSystem byRegistry(
      SingleCRS crs, String name, CoordinateReferenceSystem degreesOnDatum) {
    try {
      MathTransform shift = CRS.findMathTransform(degreesOnDatum, DefaultGeographicCRS.WGS84);
      return new SourceSystem(
          name,
          ConcatenatedTransform.create(conversion(crs), shift),
          false,
          ShiftRegion.of(degreesOnDatum));
    } catch (FactoryException e) {
      throw noTie(crs, e);
    }
  }

  private static boolean isFromGreenwich(SingleCRS crs) {
    SingleCRS base = crs instanceof ProjectedCRS projected ? projected.getBaseCRS() : crs;
    return isDegreesFromGreenwich(base)
        && base.getDatum() instanceof GeodeticDatum datum
        && datum.getPrimeMeridian().getGreenwichLongitude() == 0;
  }

  private static boolean matchesName(SingleCRS crs, List<String> names) {
    String datum =
        crs.getDatum().getName().getCode().toUpperCase(Locale.ROOT).replaceAll("[ -]", "_");
    String bare = datum.startsWith("D_") ? datum.substring(2) : datum;
    return names.stream().anyMatch(bare::startsWith);
  }

  private static InputProblem noTie(SingleCRS crs, Exception why) {
    InputProblem problem =
        new InputProblem(
            "coordinate system " + crs.getName().getCode(),
            "the datum " + crs.getDatum().getName().getCode() + " without a shift to WGS 84",
            "a system that can be tied to WGS 84",
            "Save the file in WGS 84 (EPSG:4326), or as a GeoPackage, which names its system by an"
                + " EPSG code.");
    problem.initCause(why);
    return problem;
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
