package fieldsalt.geo.datum;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * One published way from a datum to another.
 *
 * @param from EPSG code of longitude and latitude on the datum
 * @param to EPSG code of longitude and latitude on the other
 * @param operation its EPSG code
 * @param accuracyM stated, metres
 * @param numbers as the table's header says for the method
 * @param atSea made for places offshore only
 */
record DatumShift(
    int from,
    int to,
    int operation,
    String name,
    Method method,
    OptionalDouble accuracyM,
    double[] numbers,
    AreaOfUse area,
    boolean atSea) {

  /** How a shift's numbers are meant. */
  enum Method {
    TRANSLATION,
    POSITION_VECTOR,
    COORDINATE_FRAME,
    PIVOT_POSITION_VECTOR,
    PIVOT_COORDINATE_FRAME,
    OFFSET;

    static Method of(String word) {
      return valueOf(word.toUpperCase(java.util.Locale.ROOT).replace(' ', '_'));
    }

    private double rotationSign() {
      return this == COORDINATE_FRAME || this == PIVOT_COORDINATE_FRAME ? -1 : 1;
    }
  }

  static DatumShift of(String[] row) {
    return new DatumShift(
        Integer.parseInt(row[0]),
        Integer.parseInt(row[1]),
        Integer.parseInt(row[2]),
        row[3],
        Method.of(row[4]),
        row[5].isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(row[5])),
        Arrays.copyOf(GeoTable.numbers(row[6]), 10),
        AreaOfUse.of(GeoTable.numbers(row[7])),
        row[8].equals("sea"));
  }

  private static final AreaOfUse EARTH = new AreaOfUse(-180, -90, 180, 90);

  /** The datum is taken as WGS 84. */
  static DatumShift none(double accuracyM) {
    return everywhere("taken as WGS 84", Method.OFFSET, OptionalDouble.of(accuracyM));
  }

  /** Seven numbers that a file gives: metres, arc-seconds of the position vector, ppm. */
  static DatumShift given(double... seven) {
    return everywhere(
        "the shift that the file gives", Method.POSITION_VECTOR, OptionalDouble.empty(), seven);
  }

  private static DatumShift everywhere(
      String name, Method method, OptionalDouble accuracyM, double... numbers) {
    return new DatumShift(
        0, 4326, 0, name, method, accuracyM, Arrays.copyOf(numbers, 10), EARTH, false);
  }

  /** {longitude, latitude} on the other datum, degrees from Greenwich. */
  double[] move(double longitude, double latitude, Ellipsoid here, Ellipsoid there) {
    if (method == Method.OFFSET) {
      return new double[] {longitude + numbers[1] / 3600, latitude + numbers[0] / 3600};
    }
    return there.degrees(helmert().move(here.fromCentre(longitude, latitude)));
  }

  Helmert helmert() {
    double sign = method.rotationSign();
    return new Helmert(
        Arrays.copyOf(numbers, 3),
        new double[] {sign * numbers[3], sign * numbers[4], sign * numbers[5]},
        numbers[6],
        Arrays.copyOfRange(numbers, 7, 10));
  }
}
