package fieldsalt.gaussian;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Data of a few fields for tests of the block forms, and the naive dense solution of the same data:
 * whole matrices over all fields.
 */
final class DenseRanch {
  private static final double MICRO = 0.05;
  final int flat;
  final int offsets;
  final int[] sites;
  final int[] rowField;
  final double[][] x;
  final double[][] values;
  final double[][] own;
  final double[][][] shared;
  final int[][] siteOf;

  /**
   * Every third site has a paired row.
   *
   * @param sites of each field
   * @param flat shared effects with a flat prior
   * @param offsets shared standard normal effects
   */
  DenseRanch(int[] sites, int flat, int offsets) {
    this.sites = sites;
    this.flat = flat;
    this.offsets = offsets;
    Random random = new Random(100L * flat + offsets);
    int fields = sites.length;
    x = new double[fields][];
    values = new double[fields][];
    own = new double[fields][];
    siteOf = new int[fields][];
    shared = new double[fields][][];
    List<Integer> fieldOf = new ArrayList<>();
    for (int f = 0; f < fields; f++) {
      x[f] = random.doubles(sites[f], 0, 600).toArray();
      List<Integer> of = new ArrayList<>();
      for (int s = 0; s < sites[f]; s++) {
        of.add(s);
        if (s % 3 == 0) {
          of.add(s);
        }
      }
      siteOf[f] = of.stream().mapToInt(i -> i).toArray();
      int n = siteOf[f].length;
      values[f] = random.doubles(n, 0, 3).toArray();
      own[f] = random.doubles(n, 0.02, 0.2).toArray();
      shared[f] = new double[flat + offsets][];
      for (int k = 0; k < flat + offsets; k++) {
        shared[f][k] = random.doubles(n, k < flat ? -1 : 0, 0.4).toArray();
      }
      for (int i = 0; i < n; i++) {
        fieldOf.add(f);
      }
    }
    rowField = fieldOf.stream().mapToInt(i -> i).toArray();
  }

  static double covariance(double a, double b) {
    return 0.4 * Math.exp(-Math.abs(a - b) / 150);
  }

  MixedModel solve() {
    List<MixedModel.Block> blocks = new ArrayList<>();
    for (int f = 0; f < sites.length; f++) {
      double[] ones = new double[values[f].length];
      java.util.Arrays.fill(ones, 1);
      double[][] design =
          java.util.Arrays.stream(shared[f]).map(double[]::clone).toArray(double[][]::new);
      blocks.add(new MixedModel.Block(d(f), new double[][] {ones}, design, values[f]));
    }
    return new MixedModel(blocks, flat);
  }

  double[][] d(int f) {
    int n = values[f].length;
    double[][] d = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        boolean oneSite = siteOf[f][i] == siteOf[f][j];
        d[i][j] = covariance(x[f][siteOf[f][i]], x[f][siteOf[f][j]]) + (oneSite ? MICRO : 0);
      }
      d[i][i] += own[f][i];
    }
    return d;
  }

  int rows() {
    return rowField.length;
  }

  int first(int field) {
    int at = 0;
    while (rowField[at] != field) {
      at++;
    }
    return at;
  }

  double[] allValues() {
    return java.util.Arrays.stream(values).flatMapToDouble(java.util.Arrays::stream).toArray();
  }

  /** Value of a shared effect in a row. */
  double effect(int row, int k) {
    int f = rowField[row];
    return shared[f][k][row - first(f)];
  }

  /** V = D + S S' over all rows. */
  double[][] v() {
    double[][] v = new double[rows()][rows()];
    for (int f = 0; f < sites.length; f++) {
      double[][] d = d(f);
      for (int i = 0; i < d.length; i++) {
        System.arraycopy(d[i], 0, v[first(f) + i], first(f), d.length);
      }
    }
    for (int i = 0; i < v.length; i++) {
      for (int j = 0; j < v.length; j++) {
        for (int k = flat; k < flat + offsets; k++) {
          v[i][j] += effect(i, k) * effect(j, k);
        }
      }
    }
    return v;
  }

  /** X: the fields' constants, then the shared effects with a flat prior. */
  double[][] fixed() {
    double[][] fixed = new double[rows()][sites.length + flat];
    for (int i = 0; i < fixed.length; i++) {
      fixed[i][rowField[i]] = 1;
      for (int k = 0; k < flat; k++) {
        fixed[i][sites.length + k] = effect(i, k);
      }
    }
    return fixed;
  }

  /** P = V⁻¹ - V⁻¹X(X'V⁻¹X)⁻¹X'V⁻¹. */
  double[][] p() {
    double[][] inverse = inverse(v());
    double[][] vx = times(inverse, fixed());
    double[][] xvx = times(transposed(fixed()), vx);
    double[][] taken = times(times(vx, inverse(xvx)), transposed(vx));
    for (int i = 0; i < taken.length; i++) {
      for (int j = 0; j < taken.length; j++) {
        taken[i][j] = inverse[i][j] - taken[i][j];
      }
    }
    return taken;
  }

  /**
   * Best linear unbiased weights on all rows for an unknown.
   *
   * @param c its covariance with each row, S S' included
   * @param fixedOf value of each fixed effect in it
   */
  double[] weights(double[] c, double[] fixedOf) {
    int n = rows();
    int p = fixedOf.length;
    double[][] system = new double[n + p][n + p];
    double[][] v = v();
    double[][] fixed = fixed();
    for (int i = 0; i < n; i++) {
      System.arraycopy(v[i], 0, system[i], 0, n);
      for (int j = 0; j < p; j++) {
        system[i][n + j] = fixed[i][j];
        system[n + j][i] = fixed[i][j];
      }
    }
    double[] right = new double[n + p];
    System.arraycopy(c, 0, right, 0, n);
    System.arraycopy(fixedOf, 0, right, n, p);
    return java.util.Arrays.copyOf(times(inverse(system), right), n);
  }

  static double[] times(double[][] a, double[] b) {
    double[] out = new double[a.length];
    for (int i = 0; i < a.length; i++) {
      for (int j = 0; j < b.length; j++) {
        out[i] += a[i][j] * b[j];
      }
    }
    return out;
  }

  static double[][] times(double[][] a, double[][] b) {
    double[][] bt = transposed(b);
    double[][] out = new double[a.length][];
    for (int i = 0; i < a.length; i++) {
      out[i] = times(bt, a[i]);
    }
    return out;
  }

  static double[][] transposed(double[][] a) {
    double[][] t = new double[a[0].length][a.length];
    for (int i = 0; i < a.length; i++) {
      for (int j = 0; j < t.length; j++) {
        t[j][i] = a[i][j];
      }
    }
    return t;
  }

  static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  /** ln |det|, by elimination with row exchange; the matrix is replaced by its inverse's factor. */
  static double logDeterminant(double[][] matrix) {
    return eliminate(matrix, new double[matrix.length][0]);
  }

  static double[][] inverse(double[][] matrix) {
    double[][] out = new double[matrix.length][matrix.length];
    for (int i = 0; i < out.length; i++) {
      out[i][i] = 1;
    }
    eliminate(matrix, out);
    return out;
  }

  /** Gauss-Jordan with row exchange; {@code right} becomes the solution. */
  private static double eliminate(double[][] matrix, double[][] right) {
    double[][] a = java.util.Arrays.stream(matrix).map(double[]::clone).toArray(double[][]::new);
    double log = 0;
    for (int c = 0; c < a.length; c++) {
      int best = c;
      for (int r = c; r < a.length; r++) {
        best = Math.abs(a[r][c]) > Math.abs(a[best][c]) ? r : best;
      }
      swap(a, c, best);
      swap(right, c, best);
      double pivot = a[c][c];
      log += Math.log(Math.abs(pivot));
      scale(a[c], 1 / pivot);
      scale(right[c], 1 / pivot);
      for (int r = 0; r < a.length; r++) {
        double by = r == c ? 0 : a[r][c];
        subtract(a[r], a[c], by);
        subtract(right[r], right[c], by);
      }
    }
    return log;
  }

  private static void swap(double[][] a, int i, int j) {
    double[] kept = a[i];
    a[i] = a[j];
    a[j] = kept;
  }

  private static void scale(double[] row, double by) {
    for (int j = 0; j < row.length; j++) {
      row[j] *= by;
    }
  }

  private static void subtract(double[] row, double[] other, double by) {
    for (int j = 0; j < row.length && by != 0; j++) {
      row[j] -= by * other[j];
    }
  }
}
