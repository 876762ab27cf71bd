package fieldsalt.handover.machine;

import fieldsalt.geo.PlaceM;
import fieldsalt.geo.RanchProjection;
import java.util.List;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;

/**
 * Cuts a field into cells of half a swath, each with the rate of the zone that holds its centre.
 * Where the cells begin is free: of 64 beginnings, a fraction of a cell apart, the first whose
 * tonnes agree with the plan's is taken, else the best. So the centre rule holds for every cell and
 * the sum is right as well.
 */
final class TaskGridder {
  private static final int SHIFTS = 8;
  private static final double GOOD_ENOUGH = 0.001;
  private static final long MOST_LOOKUPS = 6_000_000;
  private static final double MOST_CELLS = 4_000_000;

  /** A zone, its raw rate, and a quick test of what lies in it. */
  private record RateZone(Geometry shape, Envelope box, IndexedPointInAreaLocator inside, int raw) {
    boolean holds(Coordinate at) {
      return box.contains(at) && inside.locate(at) != Location.EXTERIOR;
    }
  }

  private final RanchProjection projection;
  private final List<RateZone> zones;
  private final Envelope degrees;
  private final double cellNorth;
  private final double cellEast;
  private final double cellAreaHa;
  private final double planRaw;

  /**
   * Prepares a field.
   *
   * @param zones of this field only
   * @param raws raw rate of each zone
   * @param leastCellM cells are at least this wide
   */
  TaskGridder(
      RanchProjection projection, List<Geometry> zones, List<Integer> raws, double leastCellM) {
    this.projection = projection;
    this.zones =
        java.util.stream.IntStream.range(0, zones.size())
            .mapToObj(i -> rateZone(zones.get(i), raws.get(i)))
            .toList();
    Envelope metres = new Envelope();
    this.degrees = new Envelope();
    for (Geometry zone : zones) {
      metres.expandToInclude(zone.getEnvelopeInternal());
      degrees.expandToInclude(projection.toLonLat(zone).getEnvelopeInternal());
    }
    double cellM =
        Math.max(leastCellM, Math.sqrt(metres.getWidth() * metres.getHeight() / MOST_CELLS));
    double far = Math.max(Math.abs(degrees.getMinY()), Math.abs(degrees.getMaxY()));
    double poleward = Math.copySign(far, degrees.getMinY() + degrees.getMaxY());
    this.cellNorth = roundedUp(cellM / metresPerDegree(0, 1, degrees.centre().y));
    this.cellEast = roundedUp(cellM / metresPerDegree(1, 0, poleward));
    this.cellAreaHa =
        cellNorth
            * metresPerDegree(0, 1, degrees.centre().y)
            * cellEast
            * metresPerDegree(1, 0, degrees.centre().y)
            / 10_000;
    this.planRaw = this.zones.stream().mapToDouble(z -> z.raw * z.shape.getArea() / 10_000).sum();
  }

  private static RateZone rateZone(Geometry shape, int raw) {
    return new RateZone(
        shape, shape.getEnvelopeInternal(), new IndexedPointInAreaLocator(shape), raw);
  }

  private static double roundedUp(double degrees) {
    return Math.ceil(degrees * 1.00005 * 1e11) / 1e11;
  }

  private double metresPerDegree(int east, int north, double latitude) {
    double half = 5e-4;
    double longitude = degrees.centre().x;
    PlaceM from = projection.toMetres(longitude - east * half, latitude - north * half);
    PlaceM to = projection.toMetres(longitude + east * half, latitude + north * half);
    return from.distanceM(to) / (2 * half);
  }

  /** The grid that comes nearest to the plan's tonnes. */
  TaskGrid grid() {
    TaskGrid best = null;
    long looked = 0;
    for (int i = 0; i < SHIFTS * SHIFTS && (best == null || looked < MOST_LOOKUPS); i++) {
      // Steps of 3 and 5 eighths spread the first few beginnings over the cell.
      TaskGrid next = at((i * 3 % SHIFTS) / (double) SHIFTS, ((i / SHIFTS * 5 + i) % SHIFTS) / 8.0);
      looked += next.rates().length;
      if (best == null || next.error() < best.error()) {
        best = next;
      }
      if (best.error() <= GOOD_ENOUGH) {
        break;
      }
    }
    return best;
  }

  private TaskGrid at(double shiftNorth, double shiftEast) {
    double minNorth = rounded(degrees.getMinY() - shiftNorth * cellNorth);
    double minEast = rounded(degrees.getMinX() - shiftEast * cellEast);
    int rows = Math.max(1, (int) Math.ceil((degrees.getMaxY() - minNorth) / cellNorth));
    int columns = Math.max(1, (int) Math.ceil((degrees.getMaxX() - minEast) / cellEast));
    int[] rates = new int[rows * columns];
    double raw = 0;
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        double longitude = minEast + (column + 0.5) * cellEast;
        int rate = rateAt(longitude, minNorth + (row + 0.5) * cellNorth);
        rates[row * columns + column] = rate;
        raw += rate == TaskGrid.OUTSIDE ? 0 : rate * cellAreaHa;
      }
    }
    return new TaskGrid(
        minNorth, minEast, cellNorth, cellEast, columns, rows, rates, tonnes(raw), tonnes(planRaw));
  }

  private static double rounded(double degrees) {
    return Math.floor(degrees * 1e9) / 1e9;
  }

  /** 1 Mg/ha is 100,000 mg/m². */
  private static double tonnes(double rawHa) {
    return rawHa / 100_000;
  }

  private int rateAt(double longitude, double latitude) {
    PlaceM place = projection.toMetres(longitude, latitude);
    Coordinate at = new Coordinate(place.xM(), place.yM());
    for (RateZone zone : zones) {
      if (zone.holds(at)) {
        return zone.raw;
      }
    }
    return TaskGrid.OUTSIDE;
  }
}
