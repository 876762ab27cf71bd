package fieldsalt.geo;

import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;

/**
 * Old datums by the names that .prj files have for them. Such a file gives no shift to WGS 84; the
 * registry has one under the code of the datum's longitude and latitude. Names: as GDAL 3.6 writes
 * them for these codes ({@code gdalsrsinfo -o wkt_esri}). Only those whose shift was found within a
 * metre of GDAL's are here; a datum of another name is refused.
 */
final class NamedDatum {
  private static final Map<String, Integer> CODES =
      Map.of(
          "AMERSFOORT",
          4289,
          "BELGE_1972",
          4313,
          "CH1903",
          4149,
          "CH1903+",
          4150,
          "OSGB_1936",
          4277);

  private NamedDatum() {}

  /**
   * The EPSG code of longitude and latitude on a datum.
   *
   * @param datum its name, with or without the {@code D_} of a .prj file
   */
  static OptionalInt code(String datum) {
    String name = datum.toUpperCase(Locale.ROOT).replaceAll("[ -]", "_");
    Integer code = CODES.get(name.startsWith("D_") ? name.substring(2) : name);
    return code == null ? OptionalInt.empty() : OptionalInt.of(code);
  }
}
