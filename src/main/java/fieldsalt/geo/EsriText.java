package fieldsalt.geo;

import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.metadata.iso.citation.Citations;
import org.geotools.referencing.wkt.Formattable;

/** Well-known text in the spelling that .prj files have. */
final class EsriText {
  private EsriText() {}

  static String of(ProjectedCRS crs) {
    return ((Formattable) crs).toWKT(Citations.ESRI, Formattable.SINGLE_LINE);
  }
}
