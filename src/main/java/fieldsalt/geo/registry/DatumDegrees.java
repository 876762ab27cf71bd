package fieldsalt.geo.registry;

import fieldsalt.geo.projection.GridWay;
import fieldsalt.geo.projection.Mover;
import fieldsalt.geo.projection.OutOfReach;
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

/** The way from the coordinates of the library's systems to degrees from Greenwich. */
final class DatumDegrees {
  private DatumDegrees() {}

  static GridWay of(SingleCRS crs) throws NoninvertibleTransformException {
    SingleCRS base = crs instanceof ProjectedCRS projected ? projected.getBaseCRS() : crs;
    double unit = degrees(base.getCoordinateSystem().getAxis(0).getUnit(), 1);
    double meridian = meridian(base);
    boolean greenwich = Math.abs(unit - 1) < 1e-12 && meridian == 0;
    GridWay turned = greenwich ? GridWay.PLAIN : turned(unit, meridian);
    if (!(crs instanceof ProjectedCRS projected)) {
      return turned;
    }
    Mover toGrid = mover(projected.getConversionFromBase().getMathTransform());
    Mover toBase = mover(projected.getConversionFromBase().getMathTransform().inverse());
    return GridWay.of(then(toBase, turned.toDegrees()), then(turned.ofDegrees(), toGrid));
  }

  private static Mover then(Mover first, Mover second) {
    return (x, y) -> {
      double[] at = first.move(x, y);
      return second.move(at[0], at[1]);
    };
  }

  private static Mover mover(MathTransform transform) {
    return (x, y) -> {
      double[] at = {x, y};
      try {
        transform.transform(at, 0, at, 0, 1);
      } catch (TransformException e) {
        throw new OutOfReach(e.getMessage(), e);
      }
      if (!Double.isFinite(at[0]) || !Double.isFinite(at[1])) {
        throw new OutOfReach("no image of (" + x + ", " + y + ")");
      }
      return at;
    };
  }

  private static GridWay turned(double unit, double meridian) {
    return GridWay.of(
        (x, y) -> new double[] {x * unit + meridian, y * unit},
        (longitude, latitude) -> new double[] {(longitude - meridian) / unit, latitude / unit});
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
