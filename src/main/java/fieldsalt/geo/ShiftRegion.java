package fieldsalt.geo;

import org.geotools.api.metadata.extent.Extent;
import org.geotools.api.metadata.extent.GeographicBoundingBox;
import org.geotools.api.metadata.extent.GeographicExtent;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import org.locationtech.jts.geom.Envelope;

/**
 * Where on earth the datum shift that the registry offers is good. An old datum (NAD27, ED50) has
 * many, one a region, and the registry offers one of them.
 */
final class ShiftRegion {
  /** Shifts are good a little beyond the box of the region they were made for. */
  private static final double MARGIN_DEGREES = 1;

  private ShiftRegion() {}

  /** The box in degrees; a null envelope if the registry names none or it spans the 180th. */
  static Envelope of(CoordinateReferenceSystem crs) throws FactoryException {
    CoordinateReferenceSystem base =
        crs instanceof ProjectedCRS projected ? projected.getBaseCRS() : crs;
    Extent extent =
        CRS.getCoordinateOperationFactory(false)
            .createOperation(base, DefaultGeographicCRS.WGS84)
            .getDomainOfValidity();
    Envelope region = new Envelope();
    if (extent != null) {
      for (GeographicExtent part : extent.getGeographicElements()) {
        if (part instanceof GeographicBoundingBox box
            && box.getWestBoundLongitude() <= box.getEastBoundLongitude()) {
          region.expandToInclude(box.getWestBoundLongitude(), box.getSouthBoundLatitude());
          region.expandToInclude(box.getEastBoundLongitude(), box.getNorthBoundLatitude());
        }
      }
    }
    region.expandBy(MARGIN_DEGREES);
    return region;
  }
}
