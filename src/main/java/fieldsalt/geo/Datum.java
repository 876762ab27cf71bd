package fieldsalt.geo;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A datum of the table.
 *
 * @param code EPSG code of longitude and latitude on it
 * @param shiftsOf the code under which its shifts stand
 * @param near without a published shift, within about two metres of WGS 84
 */
record Datum(int code, String name, Ellipsoid ellipsoid, int shiftsOf, boolean near) {
  private static final class Tables {
    static final Map<Integer, Datum> BY_CODE = new HashMap<>();
    static final Map<String, Datum> BY_NAME = new HashMap<>();

    static {
      for (String[] row : GeoTable.rows("datums.csv")) {
        Datum datum = of(row);
        BY_CODE.put(datum.code, datum);
        List.of(row[6].split("\\|")).forEach(name -> BY_NAME.putIfAbsent(plain(name), datum));
      }
    }
  }

  private static Datum of(String[] row) {
    int code = Integer.parseInt(row[0]);
    return new Datum(
        code,
        row[1],
        new Ellipsoid(Double.parseDouble(row[2]), Double.parseDouble(row[3])),
        row[4].isEmpty() ? code : Integer.parseInt(row[4]),
        row[5].equals("near"));
  }

  /** The datum under an EPSG code of longitude and latitude. */
  static Optional<Datum> ofCode(int code) {
    return Optional.ofNullable(Tables.BY_CODE.get(code));
  }

  /** The datum of this name: blind to case, blanks, lines and the {@code D_} of a .prj file. */
  static Optional<Datum> named(String name) {
    return Optional.ofNullable(Tables.BY_NAME.get(plain(name)));
  }

  private static String plain(String name) {
    String upper = name.toUpperCase(Locale.ROOT);
    return (upper.startsWith("D_") ? upper.substring(2) : upper).replaceAll("[^A-Z0-9+]", "");
  }
}
