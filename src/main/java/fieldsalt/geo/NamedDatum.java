package fieldsalt.geo;

import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;

/**
 * Old datums by the names that .prj files have for them. Such a file gives no shift to WGS 84; the
 * registry has one under the code of the datum's longitude and latitude. Names: as GDAL 3.6 writes
 * them for these codes ({@code gdalsrsinfo -o wkt_esri}).
 */
final class NamedDatum {
  private static final Map<String, Integer> CODES =
      Map.ofEntries(
          Map.entry("AMERSFOORT", 4289),
          Map.entry("ARATU", 4208),
          Map.entry("ARC_1950", 4209),
          Map.entry("ARC_1960", 4210),
          Map.entry("AUSTRALIAN_1966", 4202),
          Map.entry("AUSTRALIAN_1984", 4203),
          Map.entry("BELGE_1972", 4313),
          Map.entry("CAMPO_INCHAUSPE", 4221),
          Map.entry("CAPE", 4222),
          Map.entry("CARTHAGE", 4223),
          Map.entry("CH1903", 4149),
          Map.entry("CH1903+", 4150),
          Map.entry("CORREGO_ALEGRE", 4225),
          Map.entry("DEUTSCHES_HAUPTDREIECKSNETZ", 4314),
          Map.entry("EGYPT_1907", 4229),
          Map.entry("EUROPEAN_1950", 4230),
          Map.entry("LISBON", 4207),
          Map.entry("LUXEMBOURG_REFERENCE_FRAME", 4181),
          Map.entry("MERCHICH", 4261),
          Map.entry("MGI", 4312),
          Map.entry("MONTE_MARIO", 4265),
          Map.entry("NEW_ZEALAND_1949", 4272),
          Map.entry("NORTH_AMERICAN_1927", 4267),
          Map.entry("NTF", 4275),
          Map.entry("OSGB_1936", 4277),
          Map.entry("OSNI_1952", 4188),
          Map.entry("PROVISIONAL_S_AMERICAN_1956", 4248),
          Map.entry("PULKOVO_1942", 4284),
          Map.entry("PULKOVO_1942_ADJ_1958", 4179),
          Map.entry("PULKOVO_1942_ADJ_1983", 4178),
          Map.entry("PULKOVO_1995", 4200),
          Map.entry("RT_1990", 4124),
          Map.entry("SOUTH_AMERICAN_1969", 4618),
          Map.entry("TM65", 4299),
          Map.entry("TM75", 4300),
          Map.entry("TOKYO", 4301));

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
