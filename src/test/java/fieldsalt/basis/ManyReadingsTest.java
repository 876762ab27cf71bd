package fieldsalt.basis;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.quantity.Texture;
import fieldsalt.read.Sample;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The cost is linear in rows, pairs and laboratories included. */
class ManyReadingsTest {
  private static List<Sample> sheet(int rows) {
    Random random = new Random(7);
    Texture[] textures = {Texture.LOAM, Texture.CLAY, Texture.SANDY_LOAM, Texture.CLAY_LOAM};
    List<Sample> out = new ArrayList<>();
    for (int i = 0; out.size() < rows; i++) {
      double ec = Math.exp(-0.7 + 0.6 * random.nextGaussian());
      String lab = "Lab " + i % 3;
      Texture texture = textures[i % 4];
      out.add(
          Samples.sample().id("S" + i).laboratory(lab).texture(texture).ec(ec).row(2 * i).get());
      if (i % 10 == 0) {
        double paste = 9 * ec * Math.exp(0.2 * random.nextGaussian());
        out.add(Samples.sample().id("S" + i).texture(texture).paste(paste).row(2 * i + 1).get());
      }
    }
    return out;
  }

  private static double cpuSeconds(Runnable work) {
    var bean = ManagementFactory.getThreadMXBean();
    long start = bean.getCurrentThreadCpuTime();
    work.run();
    return (bean.getCurrentThreadCpuTime() - start) / 1e9;
  }

  @Test
  void oneHundredThousandReadings() {
    List<Sample> quarter = sheet(25_000);
    List<Sample> whole = sheet(100_000);
    Basis.convert(quarter, BasisSettings.defaults());
    double small = cpuSeconds(() -> Basis.convert(quarter, BasisSettings.defaults()));
    List<Converted> kept = new ArrayList<>();
    double large = cpuSeconds(() -> kept.add(Basis.convert(whole, BasisSettings.defaults())));
    assertThat(kept.get(0).rows()).hasSize(100_000);
    // four times the rows; sorting and the collector's moods allow half as much again
    assertThat(large).as("%.2f s against %.2f s", large, small).isLessThan(4 * 1.5 * small + 0.3);
    System.getLogger("many").log(System.Logger.Level.INFO, large + " s against " + small + " s");
  }
}
