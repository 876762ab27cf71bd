package fieldsalt.surface.next;

import fieldsalt.gaussian.GaussianState;
import fieldsalt.gaussian.MixedModel;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Points;
import java.util.ArrayList;
import java.util.List;

/**
 * The joint state of everything that a new reading bears on, as the present data leave it: zone
 * means, the ranch's mean, z at the sites (micro-scale included), z at new places, the offsets.
 */
final class NextState {
  private final Solved solved;
  private final List<Group> groups = new ArrayList<>();
  private final List<double[]> weights = new ArrayList<>();
  private int elements;

  /** Places or offsets predicted together. */
  private record Group(
      int from, int size, Points points, boolean sites, MixedModel.Prediction prediction) {}

  NextState(Solved solved) {
    this.solved = solved;
  }

  /** Adds z at places, and returns the position of the first one. */
  int addPlaces(Points points) {
    FieldRows rows = solved.data().parts().get(points.part());
    return add(points, points.covariancesWith(rows, solved.model()), false);
  }

  /** Adds z at all sites of a part, their micro-scale included. */
  int addSites(int part) {
    FieldRows rows = solved.data().parts().get(part);
    Points points =
        Points.of(solved.data(), part, rows.sites().stream().map(s -> s.place()).toList());
    double[][] c = points.covariancesWith(rows, solved.model());
    for (int r = 0; r < c.length; r++) {
      c[r][rows.siteOf()[r]] = solved.model().pointVariance();
    }
    return add(points, c, true);
  }

  private int add(Points points, double[][] covariances, boolean sites) {
    int columns = solved.data().columns(points.part()).length;
    double[][] design = new double[columns][points.size()];
    java.util.Arrays.fill(design[0], 1);
    for (int d = 0; d < points.drift().length; d++) {
      design[1 + d] = points.drift()[d].clone();
    }
    return add(points, sites, points.part(), covariances, design, points.size());
  }

  /** Adds the standardised offsets. */
  int addOffsets() {
    Observations data = solved.data();
    int count = data.offsets();
    double[][] design = new double[data.columns(0).length][count];
    for (int k = 0; k < count; k++) {
      design[1 + data.drifts().size() + k][k] = 1;
    }
    double[][] none = new double[data.parts().get(0).rows().size()][count];
    return add(null, false, 0, none, design, count);
  }

  private int add(
      Points points,
      boolean sites,
      int part,
      double[][] covariances,
      double[][] design,
      int count) {
    int from = elements;
    MixedModel.Prediction p = solved.solution().predict(part, covariances, design);
    groups.add(new Group(from, count, points, sites, p));
    elements += count;
    return from;
  }

  /** Adds one number that the data know nothing of; its variance is given to {@link #state}. */
  int addUnknown() {
    groups.add(new Group(elements, 1, null, false, null));
    return elements++;
  }

  /** A contrast: the mean of some elements. */
  void addMean(int[] members) {
    double[] w = new double[members.length];
    java.util.Arrays.fill(w, 1.0 / members.length);
    weights.add(toFull(members, w));
  }

  private static double[] toFull(int[] members, double[] w) {
    double[] full = new double[java.util.Arrays.stream(members).max().orElse(-1) + 1];
    for (int i = 0; i < members.length; i++) {
      full[members[i]] += w[i];
    }
    return full;
  }

  /** Contrasts, one row each, over all elements. */
  double[][] contrasts() {
    return weights.stream().map(w -> java.util.Arrays.copyOf(w, elements)).toArray(double[][]::new);
  }

  int elements() {
    return elements;
  }

  /**
   * The state.
   *
   * @param unknownVariance of the numbers that the data know nothing of
   */
  GaussianState state(double unknownVariance) {
    double[][] p = new double[elements][elements];
    for (Group g : groups) {
      for (Group h : groups) {
        if (g.prediction != null && h.prediction != null) {
          put(p, g, h, covariance(g, h));
        }
      }
      if (g.prediction == null) {
        p[g.from][g.from] = unknownVariance;
      }
    }
    return GaussianState.of(new double[elements], p);
  }

  private double[][] covariance(Group g, Group h) {
    double[][] change = g.prediction.covarianceChange(h.prediction);
    if (g.points == null || h.points == null || g.points.part() != h.points.part()) {
      return change;
    }
    double[][] prior = g.points.covariancesWith(h.points, solved.model());
    for (int i = 0; i < change.length; i++) {
      for (int j = 0; j < change[i].length; j++) {
        boolean oneSite = g.sites && h.sites && i == j;
        change[i][j] += oneSite ? solved.model().pointVariance() : prior[i][j];
      }
    }
    return change;
  }

  private static void put(double[][] p, Group g, Group h, double[][] block) {
    for (int i = 0; i < g.size; i++) {
      System.arraycopy(block[i], 0, p[g.from + i], h.from, h.size);
    }
  }
}
