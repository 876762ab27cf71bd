package fieldsalt.surface.next;

import fieldsalt.gaussian.Prediction;
import fieldsalt.geo.PlaceM;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.Points;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What the present data leave unknown in one field: z = own + B s. {@code own} has a covariance
 * within the field, s are the effects that fields share (slopes of drifts, offsets, the offset of a
 * new reading). Fields are independent given s, so a ranch costs the sum of its fields, never a
 * matrix over all of them.
 *
 * <p>A reading of z_i + noise with the loadings b of the reading on s has, given s, the variance t
 * = own_ii + noise. It takes own_i own_i'/t from the covariance and own_i b'/t from B (what is
 * known of the field's own part then depends on s); see {@link SharedEffects} for s itself.
 */
final class FieldBlock {
  private final Solved solved;
  private final int part;
  private final List<Group> groups = new ArrayList<>();
  private final List<int[]> zones = new ArrayList<>();
  private int elements;
  private double[][] own;
  private double[][] loadings;

  /** Places predicted together. */
  private record Group(int from, Points points, boolean sites, Prediction seen) {}

  FieldBlock(Solved solved, int part) {
    this.solved = solved;
    this.part = part;
  }

  /** Adds z at places, and returns the position of the first one. */
  int addPlaces(Points points) {
    return add(points, points.covariancesWith(rows(), solved.model()), false);
  }

  /** Adds z at some sites of the field, their micro-scale included. */
  void addSites(int[] sites) {
    List<PlaceM> places =
        Arrays.stream(sites).mapToObj(s -> rows().sites().get(s).place()).toList();
    Points points = Points.of(solved.data(), part, places);
    double[][] c = points.covariancesWith(rows(), solved.model());
    for (int r = 0; r < c.length; r++) {
      int at = Arrays.binarySearch(sites, rows().siteOf()[r]);
      if (at >= 0) {
        c[r][at] = solved.model().pointVariance();
      }
    }
    add(points, c, true);
  }

  /** Adds a zone: the mean of places from a position on. */
  void addZone(int from, int size) {
    int[] members = new int[size];
    Arrays.setAll(members, i -> from + i);
    zones.add(members);
  }

  FieldRows rows() {
    return solved.data().parts().get(part);
  }

  int zoneCount() {
    return zones.size();
  }

  private int add(Points points, double[][] covariances, boolean sites) {
    double[][] constant = new double[1][points.size()];
    Arrays.fill(constant[0], 1);
    double[][] shared = points.sharedDesign(new double[solved.data().offsets()]);
    Prediction seen = solved.solution().predict(part, covariances, constant, shared);
    groups.add(new Group(elements, points, sites, seen));
    elements += points.size();
    return elements - points.size();
  }

  /**
   * Works out covariance and loadings; nothing can be added afterwards.
   *
   * @param shared number of shared effects, that of a new reading the last
   */
  void close(int shared) {
    own = new double[elements][elements];
    loadings = new double[elements][shared];
    for (Group g : groups) {
      double[][] effects = g.seen.fromShared();
      for (int i = 0; i < g.points.size(); i++) {
        for (int k = 0; k < effects.length; k++) {
          loadings[g.from + i][k] = effects[k][i];
        }
      }
    }
    for (Group g : groups) {
      for (Group h : groups) {
        put(g, h);
      }
    }
  }

  private void put(Group g, Group h) {
    double[][] change = g.seen.ownCovarianceChange(h.seen);
    double[][] prior = g.points.covariancesWith(h.points, solved.model());
    for (int i = 0; i < change.length; i++) {
      for (int j = 0; j < change[i].length; j++) {
        boolean oneSite = g.sites && h.sites && i == j;
        own[g.from + i][h.from + j] =
            change[i][j] + (oneSite ? solved.model().pointVariance() : prior[i][j]);
      }
    }
  }

  double[] loadings(int element) {
    return loadings[element];
  }

  double own(int element) {
    return own[element][element];
  }

  /** Own covariance of a zone's mean with an element. */
  double zoneWith(int zone, int element) {
    double sum = 0;
    for (int member : zones.get(zone)) {
      sum += own[member][element];
    }
    return sum / zones.get(zone).length;
  }

  /** Own variance of the mean of a zone. */
  double zoneVariance(int zone) {
    return variance(zones.get(zone));
  }

  /** Own variance of the sum of elements over a number. */
  private double variance(int[] members) {
    double sum = 0;
    for (int a : members) {
      for (int b : members) {
        sum += own[a][b];
      }
    }
    return sum / members.length / members.length;
  }

  /** Own variance of the sum of elements from a position on. */
  double sumVariance(int from, int size) {
    int[] members = new int[size];
    Arrays.setAll(members, i -> from + i);
    return variance(members) * size * size;
  }

  /** Loadings of the sum of elements from a position on. */
  double[] sumLoadings(int from, int size) {
    double[] sum = new double[loadings.length == 0 ? 0 : loadings[0].length];
    for (int i = from; i < from + size; i++) {
      for (int e = 0; e < sum.length; e++) {
        sum[e] += loadings[i][e];
      }
    }
    return sum;
  }

  /** Own covariance of the sum of elements from a position on with an element. */
  double sumWith(int from, int size, int element) {
    double sum = 0;
    for (int i = 0; i < size; i++) {
      sum += own[from + i][element];
    }
    return sum;
  }

  /** Loadings of a zone's mean. */
  double[] zoneLoadings(int zone) {
    int[] members = zones.get(zone);
    double[] mean = new double[loadings.length == 0 ? 0 : loadings[0].length];
    for (int member : members) {
      for (int k = 0; k < mean.length; k++) {
        mean[k] += loadings[member][k] / members.length;
      }
    }
    return mean;
  }

  /** The field after a reading of an element. */
  void observe(int element, double noise, double[] b) {
    double[] weights = new double[elements];
    weights[element] = 1;
    observe(weights, noise, b);
  }

  /**
   * The field after a reading of a weighted sum.
   *
   * @param b loadings of the reading on the shared effects
   */
  void observe(double[] weights, double noise, double[] b) {
    double[] p = new double[elements];
    for (int i = 0; i < elements; i++) {
      p[i] = dot(own[i], weights);
    }
    double t = dot(p, weights) + noise;
    for (int i = 0; i < elements; i++) {
      double k = p[i] / t;
      for (int j = 0; j < elements; j++) {
        own[i][j] -= k * p[j];
      }
      for (int e = 0; e < b.length; e++) {
        loadings[i][e] -= k * b[e];
      }
    }
  }

  /** Loadings of a weighted sum of elements. */
  double[] loadings(double[] weights) {
    double[] sum = new double[loadings[0].length];
    for (int i = 0; i < elements; i++) {
      for (int e = 0; e < sum.length && weights[i] != 0; e++) {
        sum[e] += weights[i] * loadings[i][e];
      }
    }
    return sum;
  }

  /** Own variance of a weighted sum of elements. */
  double variance(double[] weights) {
    double sum = 0;
    for (int i = 0; i < elements; i++) {
      sum += weights[i] == 0 ? 0 : weights[i] * dot(own[i], weights);
    }
    return sum;
  }

  int elements() {
    return elements;
  }

  static double dot(double[] x, double[] y) {
    double sum = 0;
    for (int i = 0; i < x.length; i++) {
      sum += x[i] * y[i];
    }
    return sum;
  }
}
