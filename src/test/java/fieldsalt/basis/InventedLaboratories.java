package fieldsalt.basis;

import fieldsalt.quantity.Texture;
import fieldsalt.read.sample.Sample;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A ranch with a known truth: 1:5 readings of loam and clay loam by one laboratory, some of them
 * also as paste by another, with every error drawn from the stated sizes (practice, table of
 * defaults).
 */
final class InventedLaboratories {
  static final int SITES = 30;

  private final double[] trueEce = new double[SITES];
  private final List<Sample> samples = new ArrayList<>();

  InventedLaboratories(int pairs, Random random) {
    double labConversion = random.nextGaussian();
    double labReading = random.nextGaussian();
    double labPaste = random.nextGaussian();
    double[] group = {random.nextGaussian(), random.nextGaussian()};
    Texture[] textures = {Texture.LOAM, Texture.CLAY_LOAM};
    double[] factor = {9.5, 8.6};
    double[] sd = {0.22, 0.20};
    for (int i = 0; i < SITES; i++) {
      trueEce[i] = Math.exp(Math.log(3) + random.nextDouble() * Math.log(14 / 3.0));
      int t = i % 2;
      double part = sd[t] / Math.sqrt(3);
      double ln =
          Math.log(trueEce[i] / factor[t])
              + part * labConversion
              + part * group[t]
              + 0.07 * labReading
              + Math.hypot(part, 0.05) * random.nextGaussian();
      double paste = Math.log(trueEce[i]) + 0.10 * labPaste + 0.07 * random.nextGaussian();
      String id = String.format("S%02d", i);
      samples.add(
          Samples.sample().id(id).texture(textures[t]).ec(Math.exp(ln)).row(2 * i + 2).get());
      if (i < pairs) {
        samples.add(
            Samples.sample()
                .id(id)
                .texture(textures[t])
                .paste(Math.exp(paste))
                .row(2 * i + 3)
                .get());
      }
    }
  }

  List<Sample> samples() {
    return samples;
  }

  double trueEce(String id) {
    return trueEce[Integer.parseInt(id.substring(1))];
  }

  double trueMean() {
    double sum = 0;
    for (double ece : trueEce) {
      sum += ece;
    }
    return sum / SITES;
  }
}
