package fieldsalt.surface.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Spherical;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Values of R 4.2.2 with gstat 2.1-0 for the Meuse topsoil samples (Rikken and Van Rijn 1993;
 * Burrough and McDonnell 1998; data set {@code meuse} of R package sp): ln zinc, spherical model
 * 0.05066243 + 0.5906078 Sph(897.0209).
 */
class KernelsReferenceTest {
  private static final CovarianceModel MODEL =
      new CovarianceModel(new Spherical(897.0209), 0.5906078, 0.05066243);
  private static final double RELATIVE = 1e-6;

  private static double[][] table(String name) throws IOException {
    try (InputStream in =
        KernelsReferenceTest.class.getResourceAsStream("/fieldsalt/surface/" + name)) {
      List<String> lines =
          new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().skip(1).toList();
      double[][] rows = new double[lines.size()][];
      for (int i = 0; i < rows.length; i++) {
        String[] cells = lines.get(i).split(",");
        rows[i] = new double[cells.length];
        for (int j = 0; j < cells.length; j++) {
          rows[i][j] = Double.parseDouble(cells[j]);
        }
      }
      return rows;
    }
  }

  private static double[] column(double[][] table, int column) {
    double[] values = new double[table.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = table[i][column];
    }
    return values;
  }

  private static KernelData meuse() throws IOException {
    double[][] meuse = table("meuse.csv");
    double[] lnZinc = column(meuse, 3);
    for (int i = 0; i < lnZinc.length; i++) {
      lnZinc[i] = Math.log(lnZinc[i]);
    }
    return KernelData.of(column(meuse, 1), column(meuse, 2), lnZinc);
  }

  private static void equalsColumns(
      PredictionKernel kernel, int trends, int estimate, int variance, double[][] expected) {
    for (double[] row : expected) {
      KernelGroup group = new KernelGroup(1, trends);
      group.add(0, row[0], row[1]);
      for (int q = 1; q < trends; q++) {
        group.trend[q][0] = row[2];
      }
      kernel.solver().predict(group);
      assertThat(group.estimate[0] / row[estimate]).isCloseTo(1, within(RELATIVE));
      if (variance > 0) {
        assertThat(group.variance[0] / row[variance]).isCloseTo(1, within(RELATIVE));
      }
    }
  }

  @Test
  void ordinaryKrigingFromAllSites() throws IOException {
    KernelSites sites = new KernelSites(MODEL, meuse(), true);
    equalsColumns(new SharedKernel(sites, 200), 1, 3, 4, table("meuse-predictions.csv"));
  }

  @Test
  void ordinaryKrigingFromTheNearestSixteen() throws IOException {
    KernelSites sites = new KernelSites(MODEL, meuse(), true);
    equalsColumns(new SharedKernel(sites, 16), 1, 5, 6, table("meuse-predictions.csv"));
  }

  @Test
  void krigingWithExternalDrift() throws IOException {
    KernelData data = meuse().withDrift(column(table("meuse.csv"), 4));
    CovarianceModel residual = new CovarianceModel(new Spherical(700), 0.1486, 0.08);
    KernelSites sites = new KernelSites(residual, data, true);
    equalsColumns(new SharedKernel(sites, 155), 2, 11, 12, table("meuse-predictions.csv"));
  }
}
