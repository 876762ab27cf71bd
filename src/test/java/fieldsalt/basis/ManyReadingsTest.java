package fieldsalt.basis;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.basis.pair.ConvertedReadings;
import fieldsalt.basis.setting.BasisSettings;
import fieldsalt.quantity.Texture;
import fieldsalt.read.RanchReader;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.Sample;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

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
  void fourTimesTheRowsCostFourTimesAsMuch() {
    List<Sample> quarter = sheet(12_500);
    List<Sample> whole = sheet(50_000);
    Basis.of(quarter, BasisSettings.defaults()).converted();
    double small = cpuSeconds(() -> Basis.of(quarter, BasisSettings.defaults()).converted());
    List<ConvertedReadings> kept = new ArrayList<>();
    double large =
        cpuSeconds(() -> kept.add(Basis.of(whole, BasisSettings.defaults()).converted()));
    assertThat(kept.get(0).rows()).hasSize(50_000);
    // four times the rows; sorting and the collector's moods allow half as much again
    assertThat(large).as("%.2f s against %.2f s", large, small).isLessThan(4 * 1.5 * small + 0.3);
  }

  @Test
  void convertingCostsAtMostThreeTimesTheReadingOfTheSameFile(@TempDir Path folder)
      throws IOException {
    Path file = folder.resolve("many.csv");
    StringBuilder text =
        new StringBuilder("id,depth_top_cm,depth_bottom_cm,method,ec,unit,texture,lab\n");
    for (Sample s : sheet(100_000)) {
      text.append(s.id())
          .append(",0,30,")
          .append(s.method().orElseThrow().label())
          .append(',')
          .append(String.format(Locale.ROOT, "%.3f", s.ec().orElseThrow().dSPerM()))
          .append(",dS/m,")
          .append(s.soil().texture().name().toLowerCase(Locale.ROOT).replace('_', ' '))
          .append(',')
          .append(s.laboratory())
          .append('\n');
    }
    Files.writeString(file, text);
    JobDocument job = JobDocument.ofSettings(folder, List.of());
    List<Sample> read = RanchReader.readTable(job, List.of(file)).samples();
    double reading = Double.MAX_VALUE;
    double converting = Double.MAX_VALUE;
    for (int turn = 0; turn < 3; turn++) { // in turn, the best of three: both equally warm
      reading =
          Math.min(reading, cpuSeconds(() -> RanchReader.readTable(job, List.of(file)).samples()));
      converting =
          Math.min(
              converting, cpuSeconds(() -> Basis.of(read, BasisSettings.defaults()).converted()));
    }
    assertThat(read).hasSizeGreaterThan(99_000);
    assertThat(converting)
        .as("converting %.2f s, reading %.2f s", converting, reading)
        .isLessThan(3 * reading);
  }
}
