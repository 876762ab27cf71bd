package fieldsalt.sample;

import java.util.Random;

/**
 * A Gaussian field of mean 0 and covariance sill exp(-h/range), drawn once and defined at every
 * place: a sum of waves with normal amplitudes whose frequencies are spread over the spectrum of
 * the exponential covariance. In the plane the wave number k then has the distribution function 1 -
 * 1/sqrt(1 + (range k)²) and a uniform direction.
 */
final class ExponentialField {
  private static final int WAVES = 2_000;
  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  private final double[] east = new double[WAVES];
  private final double[] north = new double[WAVES];
  private final double[] cosine = new double[WAVES];
  private final double[] sine = new double[WAVES];

  ExponentialField(Random random, double sill, double rangeM) {
    double turn = random.nextDouble();
    double size = Math.sqrt(sill / WAVES);
    for (int i = 0; i < WAVES; i++) {
      double below = (i + random.nextDouble()) / WAVES;
      double k = Math.sqrt(1 / ((1 - below) * (1 - below)) - 1) / rangeM;
      double angle = 2 * Math.PI * ((turn + i * GOLDEN) % 1);
      east[i] = k * Math.cos(angle);
      north[i] = k * Math.sin(angle);
      cosine[i] = size * random.nextGaussian();
      sine[i] = size * random.nextGaussian();
    }
  }

  /** The field at a place, metres. */
  double at(double xM, double yM) {
    double sum = 0;
    for (int i = 0; i < WAVES; i++) {
      double phase = east[i] * xM + north[i] * yM;
      sum += cosine[i] * Math.cos(phase) + sine[i] * Math.sin(phase);
    }
    return sum;
  }
}
