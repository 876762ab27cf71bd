package fieldsalt.geo;

import fieldsalt.finding.InputProblem;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.geotools.api.referencing.ReferenceIdentifier;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.crs.SingleCRS;
import org.geotools.api.referencing.datum.GeodeticDatum;
import org.geotools.referencing.datum.BursaWolfParameters;
import org.geotools.referencing.datum.DefaultGeodeticDatum;
import si.uom.SI;

/** Finds what ties the datum of a system to WGS 84. */
final class DatumTies {
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
          "MAGNA",
          "SIRGAS-CHILE",
          "MOLDREF99",
          "IGM95",
          "RGF");

  private DatumTies() {}

  /**
   * The published ways from the system's datum, found by code or name and only if its ellipsoid is
   * that datum's.
   *
   * @throws InputProblem if there is none
   */
  static WaysToWgs84 of(SingleCRS crs) {
    return published(crs).orElseThrow(() -> noTie(crs));
  }

  /** The shift that the system's own text gives, else as {@link #of}. */
  static WaysToWgs84 ofText(SingleCRS crs) {
    return given(crs).orElseGet(() -> of(crs));
  }

  private static Optional<WaysToWgs84> published(SingleCRS crs) {
    if (isWgs84(datum(crs))) {
      return Optional.of(WaysToWgs84.same());
    }
    return known(crs)
        .map(WaysToWgs84::of)
        .filter(ways -> !ways.isEmpty())
        .or(() -> near(datum(crs), ellipsoid(datum(crs))));
  }

  private static Optional<Datum> known(SingleCRS crs) {
    GeodeticDatum datum = datum(crs);
    return byCode(base(crs))
        .or(() -> Datum.named(datum.getName().getCode()))
        .filter(d -> d.ellipsoid().isNearly(ellipsoid(datum)));
  }

  private static SingleCRS base(SingleCRS crs) {
    return crs instanceof ProjectedCRS projected ? projected.getBaseCRS() : crs;
  }

  private static GeodeticDatum datum(SingleCRS crs) {
    return (GeodeticDatum) base(crs).getDatum();
  }

  private static Ellipsoid ellipsoid(GeodeticDatum datum) {
    return new Ellipsoid(
        datum
            .getEllipsoid()
            .getAxisUnit()
            .getConverterTo(SI.METRE)
            .convert(datum.getEllipsoid().getSemiMajorAxis()),
        inverseFlattening(datum.getEllipsoid()));
  }

  private static double inverseFlattening(org.geotools.api.referencing.datum.Ellipsoid ellipsoid) {
    double given = ellipsoid.getInverseFlattening();
    return Double.isInfinite(given) ? 0 : given;
  }

  private static Optional<Datum> byCode(SingleCRS geographic) {
    for (ReferenceIdentifier id : geographic.getIdentifiers()) {
      if ("EPSG".equalsIgnoreCase(id.getCodeSpace()) && id.getCode().matches("\\d{4,6}")) {
        return Datum.ofCode(Integer.parseInt(id.getCode()));
      }
    }
    return Optional.empty();
  }

  /** Seven numbers in the text; seven zeros are believed only of a datum that is not known. */
  private static Optional<WaysToWgs84> given(SingleCRS crs) {
    GeodeticDatum datum = datum(crs);
    if (datum instanceof DefaultGeodeticDatum d) {
      for (BursaWolfParameters p : d.getBursaWolfParameters()) {
        double[] seven = {p.dx, p.dy, p.dz, p.ex, p.ey, p.ez, p.ppm};
        if (Arrays.stream(seven).anyMatch(v -> v != 0) || published(crs).isEmpty()) {
          return Optional.of(WaysToWgs84.only(DatumShift.given(seven), ellipsoid(datum)));
        }
      }
    }
    return Optional.empty();
  }

  private static boolean isWgs84(GeodeticDatum datum) {
    return bareName(datum).matches("WGS_?(19)?84|WORLD_GEODETIC_SYSTEM_1984")
        && ellipsoid(datum).isNearly(Ellipsoid.WGS84);
  }

  private static Optional<WaysToWgs84> near(GeodeticDatum datum, Ellipsoid ellipsoid) {
    return ellipsoid.isNearly(Ellipsoid.WGS84)
            && NEAR_WGS84.stream().anyMatch(bareName(datum)::startsWith)
        ? Optional.of(WaysToWgs84.near())
        : Optional.empty();
  }

  private static String bareName(GeodeticDatum datum) {
    String upper = datum.getName().getCode().toUpperCase(Locale.ROOT).replaceAll("[ -]", "_");
    return upper.startsWith("D_") ? upper.substring(2) : upper;
  }

  private static InputProblem noTie(SingleCRS crs) {
    return new InputProblem(
        "coordinate system " + crs.getName().getCode(),
        "the datum "
            + crs.getDatum().getName().getCode()
            + ", for which no shift to WGS 84 is"
            + " published",
        "a system that can be tied to WGS 84",
        "Ask whoever made the file for it in WGS 84 (EPSG:4326). A program that finds no shift"
            + " either leaves the coordinates as they are, which can be off by some hundred metres.");
  }
}
