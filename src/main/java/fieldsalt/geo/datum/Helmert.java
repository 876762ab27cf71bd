package fieldsalt.geo.datum;

/**
 * A similarity between two systems of metres from the earth's centre with small rotations, as the
 * EPSG registry defines it (IOGP Guidance Note 7-2, methods 9603, 9606, 9607, 9636 and 1061).
 *
 * @param shiftM x, y, z in metres
 * @param rotationSec of the position vector about x, y, z, arc-seconds
 * @param scalePpm parts per million
 * @param pivotM the point that is turned about, metres; the earth's centre if all zero
 */
record Helmert(double[] shiftM, double[] rotationSec, double scalePpm, double[] pivotM) {
  /** The point moved. */
  double[] move(double[] pointM) {
    double x = pointM[0] - pivotM[0];
    double y = pointM[1] - pivotM[1];
    double z = pointM[2] - pivotM[2];
    double rx = radians(0);
    double ry = radians(1);
    double rz = radians(2);
    double scale = 1 + scalePpm * 1e-6;
    return new double[] {
      pivotM[0] + shiftM[0] + scale * (x - rz * y + ry * z),
      pivotM[1] + shiftM[1] + scale * (rz * x + y - rx * z),
      pivotM[2] + shiftM[2] + scale * (-ry * x + rx * y + z)
    };
  }

  private double radians(int axis) {
    return Math.toRadians(rotationSec[axis] / 3600);
  }
}
