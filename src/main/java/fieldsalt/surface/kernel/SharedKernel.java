package fieldsalt.surface.kernel;

import fieldsalt.gaussian.Elimination;
import fieldsalt.surface.site.NeighbourSearch;

/**
 * Kriging with one neighbourhood for a whole group of nearby places: the sites nearest to the
 * group's middle. One factor serves every place of the group.
 *
 * <p>This is an estimator of its own, not the one that searches neighbours for every place. With
 * more neighbours it is closer to using all sites, provided that the group is small beside its
 * neighbourhood: a group whose corner is farther than {@link #SPREAD} of the distance to the last
 * neighbour is split into four.
 */
final class SharedKernel implements PredictionKernel {
  /** Largest radius of a group, as a share of the radius of its neighbourhood. */
  private static final double SPREAD = 0.25;

  private static final int SIDE = 8;

  private final KernelSites sites;
  private final int neighbours;

  /**
   * @param neighbours sites used for each group, at least 1; 96 is a good choice; all where there
   *     are fewer
   */
  SharedKernel(KernelSites sites, int neighbours) {
    this.sites = sites;
    this.neighbours = Math.min(neighbours, sites.size());
  }

  @Override
  public int groupSide() {
    return SIDE;
  }

  @Override
  public Solver solver() {
    return new SharedSolver();
  }

  private final class SharedSolver implements Solver {
    private final NeighbourSearch.Found found = new NeighbourSearch.Found(neighbours);
    private final int width = sites.width();
    private final KernelRows rows = new KernelRows(sites, neighbours, SIDE * SIDE);
    private final KernelSums sums = sites.sums(neighbours + SIDE * SIDE);

    @Override
    public void predict(KernelGroup group) {
      group.stretch(sites.anisotropy());
      predict(group, 0, group.count());
    }

    private void predict(KernelGroup group, int from, int to) {
      KernelGroup.Box box = group.box(from, to);
      sites.search().nearest(box.x(), box.y(), found);
      double reach = SPREAD * Math.sqrt(found.farthest());
      boolean tooWide = box.radius() > reach && neighbours < sites.size();
      if (tooWide) {
        group.quarters(box, from, to, (f, t) -> predict(group, f, t));
      } else {
        for (int first = from; first < to; first += SIDE * SIDE) {
          solve(group, first, Math.min(to, first + SIDE * SIDE));
        }
      }
    }

    private void solve(KernelGroup group, int from, int to) {
      int n = found.count();
      int ends = n + to - from;
      double[][] a = rows.fill(found.indices(), n, group, from, to);
      Elimination.eliminate(a, n, n, ends + width);
      sums.clear(n, ends);
      for (int i = 0; i < n; i++) {
        sums.addRow(a[i], n, ends, a[i], ends);
      }
      sums.close(group, from, to, n);
    }
  }
}
