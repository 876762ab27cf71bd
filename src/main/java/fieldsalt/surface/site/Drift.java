package fieldsalt.surface.site;

import fieldsalt.geo.PlaceM;

/** Something known everywhere that may steer the surface: a survey, a raster. */
public interface Drift {
  /** For people: {@code ECa survey}, or the file's name. */
  String name();

  /** Its value at a place, on the scale on which it is to act linearly; NaN where it has none. */
  double at(PlaceM place);
}
