package fieldsalt.surface.fit;

import fieldsalt.gaussian.LeaveOut;
import fieldsalt.gaussian.NotPositiveDefinite;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.Observations;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Which sites' readings are doubtful: either misread, or a spot too small for the map. A doubtful
 * site has an error of its own besides, with standard deviation tau; one site in twenty is taken to
 * be so. The odds of a site come from how far it is from what all others say, and change once
 * another site is taken as doubtful: sites are flipped, the most contradicted of each field first,
 * while that makes the whole likelier (own simulation, no published source: see the methods).
 */
final class Doubt {
  /** Share of sites that are taken to be doubtful (judgement, by own simulation). */
  private static final double SHARE = 0.05;

  /** Standard deviation of a doubtful site's own error, ln (judgement, by own simulation). */
  static final double TAU = 1.5;

  /** Standardised errors from which a site is doubtful in the second start. */
  private static final double STARTS_AT = 1.9;

  private static final int MOST_ROUNDS = 25;

  /** Rounds where a field is so large that one takes about a second. */
  private static final int ROUNDS_OF_LARGE = 4;

  private static final int LARGE_FIELD = 500;

  /** One site more is flipped at once for so many of a field. */
  private static final int SITES_FOR_ANOTHER = 50;

  private final Observations data;
  private final boolean[][] held;

  /**
   * @param held sites that are believed whatever the odds, by part
   */
  Doubt(Observations data, boolean[][] held) {
    this.data = data;
    this.held = held;
  }

  /** No site doubtful. */
  static boolean[][] none(Observations data) {
    return data.parts().stream().map(p -> new boolean[p.sites().size()]).toArray(boolean[][]::new);
  }

  /** The data with the doubtful sites' own error in them. */
  static Observations with(Observations data, boolean[][] doubtful, double sd) {
    return data.withSiteErrors(doubtful, sd * sd);
  }

  /** Logarithm of the prior odds of a set. */
  static double prior(boolean[][] doubtful) {
    return count(doubtful) * Math.log(SHARE / (1 - SHARE));
  }

  static int count(boolean[][] doubtful) {
    int count = 0;
    for (boolean[] part : doubtful) {
      for (boolean site : part) {
        count += site ? 1 : 0;
      }
    }
    return count;
  }

  /**
   * The likeliest set under some models, reached from a start.
   *
   * @param models with weights that sum to 1
   */
  boolean[][] search(boolean[][] start, List<CovarianceModel> models, double[] weights) {
    boolean[][] now = copy(start);
    int rounds = data.largestField() > LARGE_FIELD ? ROUNDS_OF_LARGE : MOST_ROUNDS;
    for (int round = 0; round < rounds; round++) {
      double[][] odds = logOdds(now, models, weights);
      if (!flip(now, odds)) {
        return now;
      }
    }
    return now;
  }

  /** Flips the most contradicted sites of each field, one in a small field; whether there were. */
  private boolean flip(boolean[][] now, double[][] odds) {
    boolean flipped = false;
    for (int part = 0; part < now.length; part++) {
      boolean[] field = now[part];
      double[] own = odds[part];
      int p = part;
      int[] contradicted =
          IntStream.range(0, field.length)
              .filter(s -> (field[s] ? -own[s] : own[s]) > 1e-9 && (field[s] || !held[p][s]))
              .boxed()
              .sorted(Comparator.comparingDouble(s -> -Math.abs(own[s])))
              .limit(1 + field.length / SITES_FOR_ANOTHER)
              .mapToInt(s -> s)
              .toArray();
      for (int s : contradicted) {
        if (field[s] || 4 * (count(new boolean[][] {field}) + 1) <= field.length) {
          field[s] = !field[s];
          flipped = true;
        }
      }
    }
    return flipped;
  }

  /** Sites far from what the others say, at most a sixth of a field: the second start. */
  boolean[][] far(List<CovarianceModel> models, double[] weights) {
    boolean[][] far = none(data);
    double[][] t = standardised(none(data), models, weights);
    for (int part = 0; part < far.length; part++) {
      double[] sorted = Arrays.stream(t[part]).map(Math::abs).sorted().toArray();
      int most = sorted.length / 6;
      double least = most == 0 ? Double.POSITIVE_INFINITY : sorted[sorted.length - most];
      for (int s = 0; s < far[part].length; s++) {
        double size = Math.abs(t[part][s]);
        far[part][s] = !held[part][s] && size > STARTS_AT && size >= least;
      }
    }
    return far;
  }

  /** Logarithm of the odds of each site to be doubtful, the others as they are. */
  double[][] logOdds(boolean[][] doubtful, List<CovarianceModel> models, double[] weights) {
    return averaged(
        doubtful,
        models,
        weights,
        (error, variance) -> {
          double k = TAU * TAU / variance;
          double t2 = error * error / variance;
          return Math.log(SHARE / (1 - SHARE)) - 0.5 * Math.log1p(k) + 0.5 * t2 * k / (1 + k);
        });
  }

  private double[][] standardised(
      boolean[][] doubtful, List<CovarianceModel> models, double[] weights) {
    return averaged(doubtful, models, weights, (e, v) -> e / Math.sqrt(v));
  }

  /** What a left-out site's error and its variance say. */
  private interface Figure {
    double of(double error, double variance);
  }

  private double[][] averaged(
      boolean[][] doubtful, List<CovarianceModel> models, double[] weights, Figure figure) {
    Observations with = with(data, doubtful, TAU);
    List<double[][]> all = new ArrayList<>();
    for (CovarianceModel model : models) {
      all.add(of(with, doubtful, model, figure));
    }
    double[][] mean = all.get(0);
    for (int part = 0; part < mean.length; part++) {
      for (int s = 0; s < mean[part].length; s++) {
        double sum = 0;
        for (int k = 0; k < weights.length; k++) {
          sum += weights[k] * all.get(k)[part][s];
        }
        mean[part][s] = sum;
      }
    }
    return mean;
  }

  private static double[][] of(
      Observations with, boolean[][] doubtful, CovarianceModel model, Figure figure) {
    LeaveOut leave = Solved.of(with, model).leaveOut();
    double[][] out = new double[doubtful.length][];
    IntStream.range(0, out.length)
        .parallel()
        .forEach(
            part -> {
              out[part] = new double[doubtful[part].length];
              for (int s = 0; s < out[part].length; s++) {
                double extra = doubtful[part][s] ? TAU * TAU : 0;
                out[part][s] = one(leave, with.parts().get(part), part, s, extra, figure);
              }
            });
    return out;
  }

  /** By the best row of the site; 0 where the others do not determine it. */
  private static double one(
      LeaveOut leave, FieldRows rows, int part, int site, double extra, Figure figure) {
    int[] members = rows.rowsOf(site);
    int best = rows.bestOf(members);
    try {
      LeaveOut.Errors errors = leave.errors(part, members);
      double variance = Math.max(1e-9, errors.covariance()[best][best] - extra);
      return figure.of(errors.error()[best], variance);
    } catch (NotPositiveDefinite undetermined) {
      return figure.of(0, 1);
    }
  }

  /**
   * Sites that believe each other: two doubtful ones of a field, wrong in the same direction and
   * near each other.
   *
   * @param nearM by part: how near counts
   */
  boolean[][] supported(
      boolean[][] doubtful, List<CovarianceModel> models, double[] weights, double[] nearM) {
    double[][] t = standardised(doubtful, models, weights);
    boolean[][] supported = none(data);
    for (int part = 0; part < doubtful.length; part++) {
      FieldRows rows = data.parts().get(part);
      for (int a = 0; a < doubtful[part].length; a++) {
        for (int b = 0; b < a && doubtful[part][a]; b++) {
          boolean alike = doubtful[part][b] && t[part][a] * t[part][b] > 0;
          double apart = Math.hypot(rows.x()[a] - rows.x()[b], rows.y()[a] - rows.y()[b]);
          if (alike && apart <= nearM[part]) {
            supported[part][a] = true;
            supported[part][b] = true;
          }
        }
      }
    }
    return supported;
  }

  static boolean[][] copy(boolean[][] sites) {
    return Arrays.stream(sites).map(boolean[]::clone).toArray(boolean[][]::new);
  }
}
