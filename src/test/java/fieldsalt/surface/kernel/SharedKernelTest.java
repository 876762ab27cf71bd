package fieldsalt.surface.kernel;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Spherical;
import fieldsalt.surface.site.Grid;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * A shared neighbourhood of 96 beside the exact 32 nearest, on an invented survey: passes 10 m
 * apart, a reading every 8 m, cells of 2 m.
 */
class SharedKernelTest {
  private static final int SIDE = 80;
  private static final Grid GRID = new Grid(140, 460, 2, SIDE, SIDE);
  private static final CovarianceModel MODEL = new CovarianceModel(new Spherical(250), 3, 0.1);
  private static final KernelData SURVEY = survey();
  private static final KernelSites SITES = new KernelSites(MODEL, SURVEY, true);

  private static KernelData survey() {
    Random random = new Random(1);
    double[][] waves = new double[60][];
    for (int k = 0; k < waves.length; k++) {
      double length = 80 * Math.exp(random.nextDouble() * Math.log(700.0 / 80));
      double angle = 2 * Math.PI * random.nextDouble();
      waves[k] =
          new double[] {Math.cos(angle) / length, Math.sin(angle) / length, random.nextDouble()};
    }
    int n = 60 * 75;
    double[] x = new double[n];
    double[] y = new double[n];
    double[] z = new double[n];
    for (int i = 0; i < n; i++) {
      int pass = i / 75;
      x[i] = 10 * pass + 0.5 * random.nextGaussian();
      y[i] = 8 * (i % 75 + random.nextDouble());
      double sum = 0;
      for (double[] w : waves) {
        sum += Math.cos(2 * Math.PI * (x[i] * w[0] + y[i] * w[1] + w[2]));
      }
      z[i] = Math.exp(1.2 + 0.7 * sum / Math.sqrt(30)) + 0.1 * random.nextGaussian();
    }
    return KernelData.of(x, y, z);
  }

  /** Tiles of 8 x 8 cells, as maps are made. */
  private static double[][] shared() {
    double[][] out = new double[2][GRID.cells()];
    PredictionKernel.Solver solver = new SharedKernel(SITES, 96).solver();
    for (int top = 0; top < SIDE; top += 8) {
      for (int left = 0; left < SIDE; left += 8) {
        KernelGroup group = new KernelGroup(64, 1);
        for (int i = 0; i < 64; i++) {
          int row = top + i / 8;
          int column = left + i % 8;
          group.add(row * SIDE + column, GRID.centreX(column), GRID.centreY(row));
        }
        solver.predict(group);
        for (int i = 0; i < 64; i++) {
          out[0][group.id[i]] = group.estimate[i];
          out[1][group.id[i]] = group.variance[i];
        }
      }
    }
    return out;
  }

  /** The textbook's system of the nearest sites. */
  private static double[] exact(int cell, int nearest) {
    double x = GRID.centreX(cell % SIDE);
    double y = GRID.centreY(cell / SIDE);
    int[] sites = KernelOracle.nearest(MODEL, SURVEY, x, y, nearest);
    KernelOracle.Result at = KernelOracle.krige(MODEL, SURVEY, sites, x, y, new double[] {1}, true);
    return new double[] {at.estimate(), at.variance()};
  }

  private static double[][] exact(int[] cells, int nearest) {
    double[][] out = new double[2][cells.length];
    for (int i = 0; i < cells.length; i++) {
      double[] at = exact(cells[i], nearest);
      out[0][i] = at[0];
      out[1][i] = at[1];
    }
    return out;
  }

  private static double[] rmsErrors(double[][] map, double[][] reference, int[] cells) {
    double[] rms = new double[2];
    for (int band = 0; band < 2; band++) {
      for (int i = 0; i < cells.length; i++) {
        rms[band] += Math.pow(map[band][cells[i]] - reference[band][i], 2);
      }
      rms[band] = Math.sqrt(rms[band] / cells.length);
    }
    return rms;
  }

  /** Step across a tile's border less the mean of the steps before and after it. */
  private static double rmsKink(double[] z) {
    double sum = 0;
    int count = 0;
    for (int row = 0; row < SIDE; row++) {
      for (int column = 8; column < SIDE - 1; column += 8) {
        int cell = row * SIDE + column;
        double before = z[cell - 1] - z[cell - 2];
        double after = z[cell + 1] - z[cell];
        sum += Math.pow(z[cell] - z[cell - 1] - (before + after) / 2, 2);
        count++;
      }
    }
    return Math.sqrt(sum / count);
  }

  @Test
  void aQuarterOfTheErrorOfTheExact32AndNoRougherAtBorders() {
    double[][] shared = shared();
    double[][] exact = exact(IntStream.range(0, GRID.cells()).toArray(), 32);
    int[] cells = new Random(2).ints(200, 0, GRID.cells()).toArray();
    double[][] reference = exact(cells, 256);
    double[] ofShared = rmsErrors(shared, reference, cells);
    double[] ofExact = rmsErrors(exact, reference, cells);
    assertThat(ofShared[0]).isLessThan(ofExact[0] / 4);
    assertThat(ofShared[1]).isLessThan(ofExact[1] / 4);
    assertThat(rmsKink(shared[0])).isLessThanOrEqualTo(rmsKink(exact[0]));
  }
}
