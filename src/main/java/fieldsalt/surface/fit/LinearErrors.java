package fieldsalt.surface.fit;

import fieldsalt.gaussian.Cholesky;
import fieldsalt.gaussian.Semidefinite;
import fieldsalt.surface.site.Observations;
import java.util.function.IntFunction;

/**
 * What a linear combination of the rows, own weights l in one field and g on the carried sums of
 * the others (see {@link fieldsalt.surface.site.LinearRule}), has as value and variance under a
 * model. With carriers Z and covariance D of each field, and loadings G on the shared errors, all
 * that is needed of the other fields are the sums of Z'y, Z'DZ and G'Z.
 */
final class LinearErrors {
  private final Solved solved;
  private final double[][] value;
  private final double[][][] own;
  private final double[][][] offsets;
  private final double[] allValue;
  private final double[][] allOwn;
  private final double[][] allOffsets;
  private final double[][] root;

  /**
   * @param carriers Z of each field, one array of its rows a sum
   */
  LinearErrors(Solved solved, IntFunction<double[][]> carriers) {
    this.solved = solved;
    Observations data = solved.data();
    int parts = data.parts().size();
    int sums = carriers.apply(0).length;
    value = new double[parts][];
    own = new double[parts][][];
    offsets = new double[parts][][];
    allValue = new double[sums];
    allOwn = new double[sums][sums];
    allOffsets = new double[data.offsets()][sums];
    for (int part = 0; part < parts; part++) {
      double[][] z = carriers.apply(part);
      double[][] values = {data.parts().get(part).values()};
      value[part] = sums == 0 ? new double[0] : products(values, z)[0];
      own[part] = quadratic(solved.solution().factor(part), z);
      offsets[part] = products(data.parts().get(part).loadings(), z);
      addTo(new double[][] {allValue}, new double[][] {value[part]});
      addTo(allOwn, own[part]);
      addTo(allOffsets, offsets[part]);
    }
    root = Semidefinite.root(allOwn);
  }

  private static double[][] quadratic(Cholesky factor, double[][] z) {
    double[][] white = new double[z.length][];
    for (int k = 0; k < z.length; k++) {
      white[k] = factor.times(z[k]);
    }
    return products(white, white);
  }

  private static double[][] products(double[][] a, double[][] b) {
    double[][] out = new double[a.length][b.length];
    for (int i = 0; i < a.length; i++) {
      for (int j = 0; j < b.length; j++) {
        out[i][j] = Linear.dot(a[i], b[j]);
      }
    }
    return out;
  }

  private static void addTo(double[][] sum, double[][] more) {
    for (int i = 0; i < sum.length; i++) {
      for (int j = 0; j < sum[i].length; j++) {
        sum[i][j] += more[i][j];
      }
    }
  }

  /** The combination's value. */
  double value(int part, double[] l, double[] g) {
    double sum = Linear.dot(l, solved.data().parts().get(part).values());
    for (int k = 0; k < g.length; k++) {
      sum += g[k] * (allValue[k] - value[part][k]);
    }
    return sum;
  }

  /** Its loadings on the unit-variance shared errors. */
  double[] offsets(int part, double[] l, double[] g) {
    double[][] loadings = solved.data().parts().get(part).loadings();
    double[] sum = new double[loadings.length];
    for (int o = 0; o < sum.length; o++) {
      sum[o] = Linear.dot(loadings[o], l);
      for (int k = 0; k < g.length; k++) {
        sum[o] += (allOffsets[o][k] - offsets[part][o][k]) * g[k];
      }
    }
    return sum;
  }

  /** Its whitened own weights: products of two are l'Dl. */
  double[] white(int part, double[] l) {
    return solved.solution().factor(part).times(l);
  }

  /** g'(Z'DZ)g over the other fields. */
  double ofOthers(int part, double[] g, double[] other) {
    double sum = 0;
    for (int i = 0; i < g.length; i++) {
      for (int j = 0; j < g.length; j++) {
        sum += g[i] * other[j] * (allOwn[i][j] - own[part][i][j]);
      }
    }
    return sum;
  }

  /**
   * What two combinations of different fields have in common besides their offsets, as the product
   * of such vectors. What the rows of one field tell the other beyond the shared sums is left out:
   * under the rule's own model it is 0.
   */
  double[] carried(double[] g) {
    double[] sum = new double[g.length];
    for (int i = 0; i < g.length; i++) {
      for (int j = 0; j < g.length; j++) {
        sum[j] += g[i] * root[i][j];
      }
    }
    return sum;
  }

  /** Variance of the combination where it holds no fixed effect. */
  double variance(int part, double[] l, double[] g) {
    double[] white = white(part, l);
    double[] shared = offsets(part, l, g);
    return Linear.dot(white, white) + ofOthers(part, g, g) + Linear.dot(shared, shared);
  }
}
