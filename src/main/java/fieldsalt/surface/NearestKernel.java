package fieldsalt.surface;

import fieldsalt.gaussian.Elimination;
import java.util.Arrays;

/**
 * Kriging from the nearest sites of every place, exactly: the same estimator as a search and a
 * solve for each place alone, ties broken as {@link NeighbourSearch} says.
 *
 * <p>Places of a group share work. With h the radius of the group and d the distance from its
 * middle to the last neighbour there, the last neighbour of any place of the group lies between d -
 * h and d + h from that place. So sites nearer than d - 2h to the middle are neighbours of every
 * place: they are eliminated once. Sites farther than d + 2h are neighbours of none. Of the
 * candidates between, each place takes the nearest, and eliminates only those, from their shared
 * Schur complement. A group with too many candidates is split into four; alone, a place has none.
 */
final class NearestKernel implements PredictionKernel {
  private static final int SIDE = 4;

  /** More candidates than this a neighbour cost more than a smaller group. */
  private static final double MOST_CANDIDATES = 1;

  /** Rounding of distances must not make a tie at the border certain. */
  private static final double HAIR = 1e-9;

  private final KernelSites sites;
  private final int neighbours;

  /**
   * @param neighbours sites used for each place, at least 1, or all where there are fewer
   */
  NearestKernel(KernelSites sites, int neighbours) {
    this.sites = sites;
    this.neighbours = Math.min(neighbours, sites.size());
  }

  @Override
  public int groupSide() {
    return SIDE;
  }

  @Override
  public Solver solver() {
    return new NearestSolver();
  }

  private final class NearestSolver implements Solver {
    private final NeighbourSearch.Found found = new NeighbourSearch.Found(neighbours);
    private final int most = neighbours + (int) (MOST_CANDIDATES * neighbours);
    private final int[] near = new int[most];
    private final NearestChoice choice = new NearestChoice(most);
    private final KernelRows rows = new KernelRows(sites, most, SIDE * SIDE);
    private final KernelSums common = sites.sums(most + SIDE * SIDE);
    private final KernelSums single = sites.sums(neighbours + 1);
    private final double[][] own = new double[neighbours][neighbours + 1 + sites.width()];

    @Override
    public void predict(KernelGroup group) {
      group.stretch(sites.anisotropy());
      predict(group, 0, group.count());
    }

    private void predict(KernelGroup group, int from, int to) {
      KernelGroup.Box box = group.box(from, to);
      sites.search().nearest(box.x(), box.y(), found);
      double h = box.radius();
      if (h == 0 || neighbours == sites.size()) {
        solve(group, from, to, found.indices(), neighbours, neighbours);
        return;
      }
      double d = Math.sqrt(found.farthest());
      int count = sites.search().within(box.x(), box.y(), (d + 2 * h) * (1 + HAIR), near);
      if (count > most) {
        group.quarters(box, from, to, (f, t) -> predict(group, f, t));
      } else {
        int sure = sureFirst(box, count, (d - 2 * h) * (1 - HAIR));
        solve(group, from, to, near, sure, sure == neighbours ? sure : count);
      }
    }

    /**
     * Orders {@link #near}: those nearer than the radius, then the rest by index; how many those
     * are.
     */
    private int sureFirst(KernelGroup.Box box, int count, double radius) {
      int sure = 0;
      for (int i = 0; i < count; i++) {
        int site = near[i];
        if (Math.sqrt(squared(site, box.x(), box.y())) < radius) {
          near[i] = near[sure];
          near[sure++] = site;
        }
      }
      Arrays.sort(near, sure, count);
      return sure;
    }

    private double squared(int site, double x, double y) {
      double dx = sites.data().xM()[site] - x;
      double dy = sites.data().yM()[site] - y;
      return dx * dx + dy * dy;
    }

    /**
     * The first {@code sure} of the sites serve every place; of the candidates after them, some.
     */
    private void solve(KernelGroup group, int from, int to, int[] index, int sure, int count) {
      int ends = count + to - from;
      double[][] a = rows.fill(index, count, group, from, to);
      Elimination.eliminate(a, sure, count, ends + sites.width());
      common.clear(count, ends);
      for (int i = 0; i < sure; i++) {
        common.addRow(a[i], count, ends, a[i], ends);
      }
      if (sure == neighbours) {
        common.close(group, from, to, count);
      } else {
        for (int at = from; at < to; at++) {
          choose(index, sure, count, group.x[at], group.y[at]);
          solveOwn(a, sure, count + at - from, ends);
          single.close(group, at, at + 1, choice.count());
        }
      }
    }

    /** Of the candidates, whose order is that of their index, the nearest to one place. */
    private void choose(int[] index, int sure, int count, double x, double y) {
      choice.clear();
      for (int c = sure; c < count; c++) {
        choice.add(squared(index[c], x, y));
      }
      choice.choose(neighbours - sure, found.farthest());
    }

    /** Eliminates one place's own candidates from what the sure sites left of them. */
    private void solveOwn(double[][] a, int sure, int place, int ends) {
      int m = choice.count();
      int[] chosen = choice.chosen();
      for (int i = 0; i < m; i++) {
        double[] row = a[sure + chosen[i]];
        for (int j = i; j < m; j++) {
          own[i][j] = row[sure + chosen[j]];
        }
        own[i][m] = row[place];
        System.arraycopy(row, ends, own[i], m + 1, sites.width());
      }
      Elimination.eliminate(own, m, m, m + 1 + sites.width());
      single.copy(common, place, m);
      for (int i = 0; i < m; i++) {
        single.addRow(own[i], m, m + 1, own[i], m + 1);
      }
    }
  }
}
