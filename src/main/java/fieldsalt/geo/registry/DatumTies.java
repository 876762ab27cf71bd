package fieldsalt.geo.registry;

import fieldsalt.finding.InputProblem;
import fieldsalt.geo.datum.Datum;
import fieldsalt.geo.datum.Ellipsoid;
import fieldsalt.geo.datum.WaysToWgs84;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Stream;
import org.geotools.api.referencing.ReferenceIdentifier;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.crs.SingleCRS;
import org.geotools.api.referencing.datum.GeodeticDatum;
import org.geotools.referencing.datum.BursaWolfParameters;
import org.geotools.referencing.datum.DefaultGeodeticDatum;
import si.uom.SI;

/** Finds what ties the datum of a system to WGS 84. */
final class DatumTies {
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
    String name = datum(crs).getName().getCode();
    Ellipsoid ellipsoid = ellipsoid(datum(crs));
    return Stream.of(byCode(base(crs)).or(() -> Datum.named(name)), Datum.beginning(name))
        .flatMap(Optional::stream)
        .filter(datum -> datum.ellipsoid().isNearly(ellipsoid))
        .map(WaysToWgs84::of)
        .filter(ways -> !ways.isEmpty())
        .findFirst();
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
          return Optional.of(WaysToWgs84.given(seven, ellipsoid(datum)));
        }
      }
    }
    return Optional.empty();
  }

  private static InputProblem noTie(SingleCRS crs) {
    return new InputProblem(
        "coordinate system " + crs.getName().getCode(),
        "the datum "
            + crs.getDatum().getName().getCode()
            + ", for which no shift to WGS 84 is published",
        "a system that can be tied to WGS 84",
        "Ask whoever made the file for it in WGS 84 (EPSG:4326). A program that finds no shift"
            + " either leaves the coordinates as they are, which can be off by some hundred metres.");
  }
}
