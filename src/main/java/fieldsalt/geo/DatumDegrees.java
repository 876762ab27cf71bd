package fieldsalt.geo;

import java.awt.geom.AffineTransform;
import javax.measure.Unit;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.crs.SingleCRS;
import org.geotools.api.referencing.datum.GeodeticDatum;
import org.geotools.api.referencing.datum.PrimeMeridian;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.NoninvertibleTransformException;
import org.geotools.measure.Units;
import org.geotools.referencing.operation.transform.AffineTransform2D;
import org.geotools.referencing.operation.transform.ConcatenatedTransform;
import org.geotools.referencing.operation.transform.IdentityTransform;
import si.uom.NonSI;

/** The way from a system's coordinates to degrees from Greenwich on its own datum. */
final class DatumDegrees {
  private DatumDegrees() {}

  static MathTransform of(SingleCRS crs) throws NoninvertibleTransformException {
    if (!(crs instanceof ProjectedCRS projected)) {
      return fromGreenwich(crs);
    }
    return ConcatenatedTransform.create(
        projected.getConversionFromBase().getMathTransform().inverse(),
        fromGreenwich(projected.getBaseCRS()));
  }

  private static MathTransform fromGreenwich(SingleCRS geographic) {
    Unit<?> unit = geographic.getCoordinateSystem().getAxis(0).getUnit();
    double degrees = degrees(unit, 1);
    PrimeMeridian prime = ((GeodeticDatum) geographic.getDatum()).getPrimeMeridian();
    double meridian = degrees(prime.getAngularUnit(), prime.getGreenwichLongitude());
    boolean plain = Math.abs(degrees - 1) < 1e-12 && meridian == 0;
    return plain
        ? IdentityTransform.create(2)
        : new AffineTransform2D(new AffineTransform(degrees, 0, 0, degrees, meridian, 0));
  }

  private static double degrees(Unit<?> unit, double angle) {
    return Units.getConverterToAny(unit, NonSI.DEGREE_ANGLE).convert(angle);
  }
}
