package fieldsalt.read.file;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;

/**
 * One feature of a file.
 *
 * @param number from 1, in the file's order
 * @param geometry in the file's own coordinates, x or longitude first; empty if it has none
 * @param properties as text, in the file's order; null values left out
 */
public record GeoFeature(int number, Optional<Geometry> geometry, Map<String, String> properties) {

  /**
   * The features of a file.
   *
   * @param system of the coordinates, {@code EPSG:n} or well-known text; empty for WGS 84 degrees
   */
  public record Collection(String file, List<GeoFeature> features, Optional<String> system) {
    public String where(GeoFeature feature) {
      return file + " feature " + feature.number();
    }
  }
}
