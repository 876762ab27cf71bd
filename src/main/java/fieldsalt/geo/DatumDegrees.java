package fieldsalt.geo;

import javax.measure.Unit;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.crs.SingleCRS;
import org.geotools.api.referencing.datum.GeodeticDatum;
import org.geotools.api.referencing.datum.PrimeMeridian;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.NoninvertibleTransformException;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.measure.Units;
import si.uom.NonSI;

/** The way from a system's coordinates to degrees from Greenwich on its own datum. */
final class DatumDegrees {
  /**
   * There and back.
   *
   * @param plain the coordinates are such degrees already
   */
  record Way(Vertices.Mover toDegrees, Vertices.Mover ofDegrees, boolean plain) {
    static final Way PLAIN =
        new Way((x, y) -> new double[] {x, y}, (x, y) -> new double[] {x, y}, true);

    /** A way that is needed in this direction only. */
    static Way back(Vertices.Mover toDegrees) {
      return new Way(
          toDegrees,
          (longitude, latitude) -> {
            throw new TransformException("no way to this grid");
          },
          false);
    }
  }

  private DatumDegrees() {}

  static Way of(SingleCRS crs) throws NoninvertibleTransformException {
    SingleCRS base = crs instanceof ProjectedCRS projected ? projected.getBaseCRS() : crs;
    double unit = degrees(base.getCoordinateSystem().getAxis(0).getUnit(), 1);
    double meridian = meridian(base);
    if (!(crs instanceof ProjectedCRS projected)) {
      return Math.abs(unit - 1) < 1e-12 && meridian == 0 ? Way.PLAIN : turned(unit, meridian);
    }
    MathTransform toGrid = projected.getConversionFromBase().getMathTransform();
    MathTransform toBase = toGrid.inverse();
    Way turned = turned(unit, meridian);
    return new Way(
        (x, y) -> {
          double[] at = Vertices.transform(x, y, toBase);
          return turned.toDegrees().move(at[0], at[1]);
        },
        (longitude, latitude) -> {
          double[] at = turned.ofDegrees().move(longitude, latitude);
          return Vertices.transform(at[0], at[1], toGrid);
        },
        false);
  }

  private static Way turned(double unit, double meridian) {
    return new Way(
        (x, y) -> new double[] {x * unit + meridian, y * unit},
        (longitude, latitude) -> new double[] {(longitude - meridian) / unit, latitude / unit},
        false);
  }

  /** The system's meridian, degrees from Greenwich. */
  static double meridian(SingleCRS geographic) {
    PrimeMeridian prime = ((GeodeticDatum) geographic.getDatum()).getPrimeMeridian();
    return degrees(prime.getAngularUnit(), prime.getGreenwichLongitude());
  }

  private static double degrees(Unit<?> unit, double angle) {
    return Units.getConverterToAny(unit, NonSI.DEGREE_ANGLE).convert(angle);
  }
}
