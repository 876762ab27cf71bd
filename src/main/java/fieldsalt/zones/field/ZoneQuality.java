package fieldsalt.zones.field;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.algorithm.locate.PointOnGeometryLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Location;

/**
 * Which zone a place lies in, and how much of the variance of values at places lies between zones.
 */
public final class ZoneQuality {
  private static final int FEWEST = 3;

  private final List<Zone> zones;
  private final List<PointOnGeometryLocator> locators = new ArrayList<>();
  private final List<Envelope> boxes = new ArrayList<>();

  /** For zones of one field or of several. */
  public ZoneQuality(List<Zone> zones) {
    this.zones = List.copyOf(zones);
    for (Zone zone : zones) {
      locators.add(new IndexedPointInAreaLocator(zone.shapeM()));
      boxes.add(zone.shapeM().getEnvelopeInternal());
    }
  }

  /**
   * Index in the list of the zone that holds a place, the first of those that share it; -1 if none.
   */
  public int zoneAt(double xM, double yM) {
    Coordinate place = new Coordinate(xM, yM);
    for (int z = 0; z < zones.size(); z++) {
      if (boxes.get(z).contains(place) && locators.get(z).locate(place) != Location.EXTERIOR) {
        return z;
      }
    }
    return -1;
  }

  /**
   * Share of the variance of values that lies between groups: 1 - (sum of squares within) / (sum of
   * squares in all), 0 to 1; 0 where all values are alike. Values of group -1 are left out. What
   * the groups were made from they explain too well: see {@link #predictedShare}.
   *
   * @param group of each value
   */
  public static double shareBetween(double[] values, int[] group) {
    Sums sums = Sums.of(values, group);
    double[] sum = sums.sum();
    int[] count = sums.count();
    int groups = count.length - 1;
    double within = 0;
    double all = 0;
    for (int i = 0; i < values.length; i++) {
      if (group[i] >= 0) {
        double inGroup = values[i] - sum[group[i]] / count[group[i]];
        double inAll = values[i] - sum[groups] / count[groups];
        within += inGroup * inGroup;
        all += inAll * inAll;
      }
    }
    return all <= 1e-12 * count[groups] ? 0 : Math.max(0, 1 - within / all);
  }

  /**
   * How much better the mean of a value's group predicts it than the mean of all, the value itself
   * in neither: 1 - (sum of squared errors from the group's other values) / (sum of squared errors
   * from all other values). At most 1; 0 or less if the groups predict nothing. A value alone in
   * its group is predicted by the mean of all others. Values of group -1 are left out.
   *
   * @param group of each value
   * @return empty for fewer than 3 values, or where all are alike
   */
  public static OptionalDouble predictedShare(double[] values, int[] group) {
    Sums sums = Sums.of(values, group);
    double[] sum = sums.sum();
    int[] count = sums.count();
    int groups = count.length - 1;
    if (count[groups] < FEWEST) {
      return OptionalDouble.empty();
    }
    double byGroup = 0;
    double byAll = 0;
    for (int i = 0; i < values.length; i++) {
      if (group[i] >= 0) {
        double all = values[i] - (sum[groups] - values[i]) / (count[groups] - 1);
        int others = count[group[i]] - 1;
        double own = others == 0 ? all : values[i] - (sum[group[i]] - values[i]) / others;
        byAll += all * all;
        byGroup += own * own;
      }
    }
    return byAll <= 1e-12 * count[groups]
        ? OptionalDouble.empty()
        : OptionalDouble.of(1 - byGroup / byAll);
  }

  /** Sums and numbers of values by group, and over all at the end. */
  private record Sums(double[] sum, int[] count) {
    static Sums of(double[] values, int[] group) {
      int groups = Arrays.stream(group).max().orElse(-1) + 1;
      Sums sums = new Sums(new double[groups + 1], new int[groups + 1]);
      for (int i = 0; i < values.length; i++) {
        if (group[i] >= 0) {
          sums.add(group[i], values[i]);
          sums.add(groups, values[i]);
        }
      }
      return sums;
    }

    private void add(int to, double value) {
      sum[to] += value;
      count[to]++;
    }
  }
}
