package fieldsalt.surface;

import java.util.Arrays;

/**
 * Inverse distance weighting: the mean of the nearest sites' values, each with the weight 1 /
 * distance^power (Shepard 1968). At a site's own place the estimate is its value; where several
 * sites stand at that place, their mean. It has no variance of its own: {@link
 * KernelGroup#variance} is left 0.
 */
final class InverseDistance implements PredictionKernel {
  private static final int SIDE = 16;
  private static final int SEARCH_SIDE = 2;

  private final KernelData data;
  private final double power;
  private final int neighbours;
  private final NeighbourSearch search;

  /**
   * @param power greater than 0; 2 is usual
   * @param neighbours sites used for each place, at least 1; all where there are fewer
   */
  InverseDistance(KernelData data, double power, int neighbours) {
    if (!(power > 0) || neighbours < 1) {
      throw new IllegalArgumentException(
          "power and neighbours must be above 0, were " + power + " and " + neighbours);
    }
    this.data = data;
    this.power = power;
    this.neighbours = Math.min(neighbours, data.size());
    search = new NeighbourSearch(data.xM(), data.yM());
  }

  @Override
  public int groupSide() {
    return neighbours == data.size() ? SIDE : SEARCH_SIDE;
  }

  @Override
  public Solver solver() {
    return neighbours == data.size() ? this::fromAll : new NearestSolver();
  }

  private void fromAll(KernelGroup group) {
    int places = group.count();
    double[] weights = group.variance;
    Arrays.fill(weights, 0, places, 0);
    Arrays.fill(group.estimate, 0, places, 0);
    for (int i = 0; i < data.size(); i++) {
      addSite(group, i, weights, places);
    }
    for (int j = 0; j < places; j++) {
      boolean atSite = Double.isInfinite(weights[j]);
      group.estimate[j] = atSite ? valueAt(group.x[j], group.y[j]) : group.estimate[j] / weights[j];
    }
    Arrays.fill(weights, 0, places, 0);
  }

  private void addSite(KernelGroup group, int site, double[] weights, int places) {
    double x = data.xM()[site];
    double y = data.yM()[site];
    double value = data.value()[site];
    if (power == 2) {
      for (int j = 0; j < places; j++) {
        double dx = group.x[j] - x;
        double dy = group.y[j] - y;
        double weight = 1 / (dx * dx + dy * dy);
        weights[j] += weight;
        group.estimate[j] += weight * value;
      }
    } else {
      for (int j = 0; j < places; j++) {
        double dx = group.x[j] - x;
        double dy = group.y[j] - y;
        double weight = weight(dx * dx + dy * dy);
        weights[j] += weight;
        group.estimate[j] += weight * value;
      }
    }
  }

  private double weight(double squared) {
    return power == 2 ? 1 / squared : Math.pow(squared, -power / 2);
  }

  /** Mean of the sites at, or too near to tell from, a place. */
  private double valueAt(double x, double y) {
    double sum = 0;
    int count = 0;
    for (int i = 0; i < data.size(); i++) {
      double dx = data.xM()[i] - x;
      double dy = data.yM()[i] - y;
      if (Double.isInfinite(weight(dx * dx + dy * dy))) {
        sum += data.value()[i];
        count++;
      }
    }
    return sum / count;
  }

  private final class NearestSolver implements Solver {
    private final NeighbourSearch.Found found = new NeighbourSearch.Found(neighbours);
    private final int[] near = new int[4 * neighbours];

    @Override
    public void predict(KernelGroup group) {
      KernelGroup.Box box = group.box(0, group.count());
      search.nearest(box.x(), box.y(), found);
      double reach = Math.sqrt(found.farthest()) + 2 * box.radius();
      int count = search.within(box.x(), box.y(), reach * (1 + 1e-9), near);
      for (int j = 0; j < group.count(); j++) {
        if (count <= near.length) {
          choose(count, group.x[j], group.y[j]);
        } else {
          search.nearest(group.x[j], group.y[j], found);
        }
        group.estimate[j] = mean();
        group.variance[j] = 0;
      }
    }

    /** No neighbour of a place of the group is outside the first {@code count} of near. */
    private void choose(int count, double x, double y) {
      found.clear();
      for (int i = 0; i < count; i++) {
        double dx = data.xM()[near[i]] - x;
        double dy = data.yM()[near[i]] - y;
        found.offer(dx * dx + dy * dy, near[i]);
      }
    }

    private double mean() {
      double sum = 0;
      double weights = 0;
      for (int rank = 0; rank < found.count(); rank++) {
        double weight = weight(found.squaredM2(rank));
        if (Double.isInfinite(weight)) {
          return meanAtPlace(rank);
        }
        weights += weight;
        sum += weight * data.value()[found.index(rank)];
      }
      return sum / weights;
    }

    /** The first ranks stand at the place itself. */
    private double meanAtPlace(int first) {
      double sum = 0;
      int count = 0;
      for (int rank = first; rank < found.count(); rank++) {
        if (Double.isInfinite(weight(found.squaredM2(rank)))) {
          sum += data.value()[found.index(rank)];
          count++;
        }
      }
      return sum / count;
    }
  }
}
