package fieldsalt.basis;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.basis.pair.ConvertedReadings;
import fieldsalt.basis.setting.BasisSettings;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Whether the stated errors are true: ranches whose factor is off the published one by its stated
 * sigma, with 0, 3, 8 and 20 pairs.
 */
class SimulationTest {
  private static final int[] PAIRS = {0, 3, 8, 20};

  /** What many ranches showed with so many pairs. */
  private record Shown(
      int pairs, double rmse, double predicted, double coverSingle, double coverMean) {
    double ratio() {
      return rmse / predicted;
    }
  }

  private static Shown show(int ranches, int pairs, long seed) {
    Random random = new Random(seed * 1000 + pairs);
    double squares = 0;
    double variances = 0;
    int inMean = 0;
    int single = 0;
    int inSingle = 0;
    for (int r = 0; r < ranches; r++) {
      InventedLaboratories truth = new InventedLaboratories(pairs, random);
      ConvertedReadings c = Basis.of(truth.samples(), BasisSettings.defaults()).converted();
      ConvertedReadings.Mean mean = c.means().get(0);
      double error = Math.log(mean.ece() / truth.trueMean());
      squares += error * error;
      variances += mean.sdLn() * mean.sdLn();
      inMean += mean.low() <= truth.trueMean() && truth.trueMean() <= mean.high() ? 1 : 0;
      for (ConvertedReadings.Row row : c.rows()) {
        if (row.method().equals("1:5")) {
          double ece = truth.trueEce(row.sample().id());
          single++;
          inSingle += row.low() <= ece && ece <= row.high() ? 1 : 0;
        }
      }
    }
    return new Shown(
        pairs,
        Math.sqrt(squares / ranches),
        Math.sqrt(variances / ranches),
        inSingle / (double) single,
        inMean / (double) ranches);
  }

  @Test
  void oneHundredRanches() {
    double band = 3 * Math.sqrt(0.9 * 0.1 / 100);
    double before = Double.POSITIVE_INFINITY;
    for (int pairs : PAIRS) {
      Shown s = show(100, pairs, 1);
      assertThat(s.coverSingle())
          .as("single ECe, %s pairs", pairs)
          .isBetween(0.9 - band, 0.9 + band);
      assertThat(s.coverMean()).as("ranch mean, %s pairs", pairs).isBetween(0.9 - band, 0.9 + band);
      // three standard errors of a standard deviation from 100 draws
      assertThat(s.ratio()).as("error of the mean, %s pairs", pairs).isBetween(0.79, 1.21);
      assertThat(s.predicted()).isLessThan(before);
      before = s.predicted();
    }
  }

  @Test
  @Tag("whole")
  void oneThousandRanches() {
    for (int pairs : PAIRS) {
      Shown s = show(1000, pairs, 1);
      String line =
          String.format(
              Locale.ROOT,
              "%d pairs: error of the mean %.4f, predicted %.4f, ratio %.3f; 90 %% interval covers %.3f"
                  + " of single ECe, %.3f of ranch means",
              pairs,
              s.rmse(),
              s.predicted(),
              s.ratio(),
              s.coverSingle(),
              s.coverMean());
      assertThat(s.ratio()).as(line).isBetween(0.9, 1.1);
      assertThat(s.coverSingle()).as(line).isBetween(0.88, 0.92);
      assertThat(s.coverMean()).as(line).isBetween(0.86, 0.94);
      java.util.logging.Logger.getLogger("simulation").info(line);
    }
  }
}
