package fieldsalt.geo.datum;

import java.util.HashMap;
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
public record Datum(int code, String name, Ellipsoid ellipsoid, int shiftsOf, boolean near) {
  private static final class Tables {
    static final Map<Integer, Datum> BY_CODE = new HashMap<>();
    static final Map<String, Datum> BY_NAME = new HashMap<>();
    static final Map<String, Datum> BY_BEGINNING = new HashMap<>();

    static {
      for (String[] row : GeoTable.rows("datums.csv")) {
        Datum datum = of(row);
        BY_CODE.put(datum.code, datum);
        for (String name : row[6].split("\\|")) {
          (name.endsWith("*") ? BY_BEGINNING : BY_NAME).putIfAbsent(plain(name), datum);
        }
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
  public static Optional<Datum> ofCode(int code) {
    return Optional.ofNullable(Tables.BY_CODE.get(code));
  }

  /** The datum of this name: blind to case, blanks, lines and the {@code D_} of a .prj file. */
  public static Optional<Datum> named(String name) {
    return Optional.ofNullable(Tables.BY_NAME.get(plain(name)));
  }

  /** What datums whose name begins like this one are taken as, where the name is not known. */
  public static Optional<Datum> beginning(String name) {
    String whole = plain(name);
    return Tables.BY_BEGINNING.entrySet().stream()
        .filter(entry -> whole.startsWith(entry.getKey()))
        .map(Map.Entry::getValue)
        .findFirst();
  }

  private static String plain(String name) {
    String upper = name.toUpperCase(Locale.ROOT);
    return (upper.startsWith("D_") ? upper.substring(2) : upper).replaceAll("[^A-Z0-9+]", "");
  }
}
