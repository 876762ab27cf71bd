package fieldsalt.surface.fit;

import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.site.Observations;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/**
 * The models that a surface rests on where some sites are doubtful: each set of doubtful sites that
 * may be the right one counts half with these sites left out and half with them believed, because a
 * single high reading and a small salty spot look the same. The map is a mixture of all of them.
 */
public final class Doubts {
  private static final int FEWEST_SITES = 10;

  /** Sites up to which both starts are tried, and near ties are averaged over. */
  private static final int FEW_SITES = 100;

  /** Sites near a tie, each taken both ways. */
  private static final int TIES = 3;

  private static final double TIE = 4;

  /** Standard deviation of the own error that leaves a reading out, ln. */
  private static final double LEFT_OUT = 5;

  private static final int REFITS = 3;

  /** Sites of a field above which the model is not fitted again. */
  private static final int LARGE_FIELD = 500;

  /** Predictors kept in all. */
  private static final int MOST = 48;

  /** Two doubtful sites nearer than this, in spacings, believe each other. */
  private static final double NEAR = 1.25;

  private final Modelled plain;
  private final Observations data;
  private final double[] nearM;

  private final boolean[][] believed;

  private Doubts(Modelled plain, double[] areaM2, Set<String> believedIds) {
    this.plain = plain;
    this.data = plain.likelihood().data();
    nearM = new double[areaM2.length];
    for (int part = 0; part < nearM.length; part++) {
      int sites = data.parts().get(part).sites().size();
      nearM[part] = NEAR * Math.sqrt(areaM2[part] / sites);
    }
    believed = Doubt.none(data);
    for (int part = 0; part < believed.length; part++) {
      for (int s = 0; s < believed[part].length; s++) {
        believed[part][s] = believedIds.contains(data.parts().get(part).sites().get(s).id());
      }
    }
  }

  /**
   * A site in doubt.
   *
   * @param chance that it is misread or a spot too small for the map
   * @param left its value and what the others say
   * @param supported a neighbour in doubt in the same direction believes it: it counts whole
   */
  public record Site(int part, int site, double chance, LeftOut left, boolean supported) {}

  /**
   * What came of it.
   *
   * @param modelled the plain models where nothing is in doubt
   * @param sites in doubt, the most doubtful first
   */
  public record Result(Modelled modelled, List<Site> sites) {}

  /**
   * Looks for doubtful sites.
   *
   * @param areaM2 of each part's field
   * @param believed ids of sites that a person has confirmed
   */
  public static Result of(Modelled plain, double[] areaM2, Set<String> believed) {
    if (plain.likelihood().data().siteCount() < FEWEST_SITES || plain.described().isDefault()) {
      return new Result(plain, List.of());
    }
    return new Doubts(plain, areaM2, believed).result();
  }

  /** A set of doubtful sites with the models fitted to it. */
  private record State(
      boolean[][] doubtful,
      CovarianceModel likeliest,
      List<CovarianceModel> models,
      double[] weights,
      double score) {}

  private Result result() {
    State start = plainState();
    boolean[][] held = believed;
    State best = settled(start, held);
    if (data.siteCount() <= 3 * FEW_SITES) {
      boolean[][] far = new Doubt(data, held).far(start.models, start.weights);
      if (Doubt.count(far) > 0) {
        State other = settled(fitted(far), held);
        best = other.score > best.score ? other : best;
      }
    }
    if (Doubt.count(best.doubtful) == 0) {
      return new Result(plain, List.of());
    }
    boolean[][] supported =
        new Doubt(data, held).supported(best.doubtful, best.models, best.weights, nearM);
    List<Site> sites = new ArrayList<>();
    if (Doubt.count(supported) > 0) {
      sites.addAll(supported(best, supported));
      held = either(believed, supported);
      best = settled(fitted(without(best.doubtful, supported)), held);
    }
    return mixed(best, held, sites);
  }

  private static boolean[][] either(boolean[][] one, boolean[][] other) {
    boolean[][] both = Doubt.copy(one);
    for (int part = 0; part < both.length; part++) {
      for (int s = 0; s < both[part].length; s++) {
        both[part][s] |= other[part][s];
      }
    }
    return both;
  }

  private static boolean[][] without(boolean[][] all, boolean[][] some) {
    boolean[][] left = Doubt.copy(all);
    for (int part = 0; part < left.length; part++) {
      for (int s = 0; s < left[part].length; s++) {
        left[part][s] &= !some[part][s];
      }
    }
    return left;
  }

  private State plainState() {
    List<CovarianceModel> models = plain.nodes().stream().map(Solved::model).toList();
    double[] weights = plain.nodes().stream().mapToDouble(Solved::weight).toArray();
    return new State(
        Doubt.none(data), plain.fit().model(), models, weights, plain.fit().logLikelihood());
  }

  /** Flips and fits in turn until the set stays as it is. */
  private State settled(State from, boolean[][] held) {
    State now = from;
    Doubt doubt = new Doubt(data, held);
    for (int fit = 0; fit < REFITS; fit++) {
      boolean[][] next = doubt.search(now.doubtful, now.models, now.weights);
      if (Arrays.deepEquals(next, now.doubtful)) {
        return now;
      }
      now = fitted(next);
    }
    return now;
  }

  /** The models fitted again, of the shape that was chosen. */
  private State fitted(boolean[][] doubtful) {
    Likelihood likelihood = new Likelihood(Doubt.with(data, doubtful, Doubt.TAU));
    Reml reml = new Reml(likelihood);
    Reml.Fit fit =
        data.largestField() > LARGE_FIELD
            ? new Reml.Fit(plain.fit().model(), likelihood.of(plain.fit().model()))
            : reml.again(plain.fit().model());
    List<CovarianceModel> models = List.of(fit.model());
    double[] weights = {1};
    if (data.siteCount() < FEW_SITES) {
      List<Solved> nodes = Averaging.over(likelihood, fit.model().correlation(), reml);
      models = nodes.stream().map(Solved::model).toList();
      weights = nodes.stream().mapToDouble(Solved::weight).toArray();
    }
    return new State(
        doubtful, fit.model(), models, weights, fit.logLikelihood() + Doubt.prior(doubtful));
  }

  /** Sets that may be right, each with its models weighted by their likelihood and its prior. */
  private Result mixed(State best, boolean[][] held, List<Site> found) {
    Doubt doubt = new Doubt(data, held);
    double[][] odds = doubt.logOdds(best.doubtful, best.models, best.weights);
    List<boolean[][]> sets = sets(best.doubtful, odds, held);
    List<double[]> logLikelihoods = new ArrayList<>();
    double top = Double.NEGATIVE_INFINITY;
    for (boolean[][] set : sets) {
      double[] logs = logLikelihoods(best, set);
      logLikelihoods.add(logs);
      top = Math.max(top, Arrays.stream(logs).max().orElseThrow());
    }
    int each = Math.max(1, MOST / (2 * sets.size()));
    List<Solved> nodes = new ArrayList<>();
    double[][] chance = new double[data.parts().size()][];
    Arrays.setAll(chance, part -> new double[best.doubtful[part].length]);
    double all = total(logLikelihoods, top);
    for (int c = 0; c < sets.size(); c++) {
      double[] weights = relative(logLikelihoods.get(c), top);
      double weight = Arrays.stream(weights).sum() / all;
      addChance(chance, sets.get(c), weight);
      if (weight > 0.005) {
        double[] kept = Averaging.thinned(weights, each);
        add(nodes, best.models, kept, weight, sets.get(c));
      }
    }
    found.addAll(sites(best, chance));
    found.sort(Comparator.comparingDouble((Site s) -> -s.chance()));
    return new Result(withNodes(best, nodes), found);
  }

  private double[] logLikelihoods(State best, boolean[][] set) {
    Likelihood likelihood = new Likelihood(Doubt.with(data, set, Doubt.TAU));
    double[] logs = new double[best.models.size()];
    for (int k = 0; k < logs.length; k++) {
      logs[k] = likelihood.of(best.models.get(k)) + Doubt.prior(set);
    }
    return logs;
  }

  private static double[] relative(double[] logs, double top) {
    return Arrays.stream(logs).map(l -> Math.exp(l - top)).toArray();
  }

  private static double total(List<double[]> logs, double top) {
    return logs.stream().mapToDouble(l -> Arrays.stream(relative(l, top)).sum()).sum();
  }

  private static void addChance(double[][] chance, boolean[][] set, double weight) {
    for (int part = 0; part < chance.length; part++) {
      for (int s = 0; s < chance[part].length; s++) {
        chance[part][s] += set[part][s] ? weight : 0;
      }
    }
  }

  /** Half without the doubtful sites, half with them. */
  private void add(
      List<Solved> nodes,
      List<CovarianceModel> models,
      double[] kept,
      double weight,
      boolean[][] set) {
    Likelihood without = new Likelihood(Doubt.with(data, set, LEFT_OUT));
    for (int k = 0; k < kept.length; k++) {
      if (kept[k] > 0 && Doubt.count(set) > 0) {
        double half = 0.5 * weight * kept[k];
        nodes.add(without.solve(models.get(k)).withWeight(half));
        nodes.add(plain.likelihood().solve(models.get(k)).withWeight(half));
      } else if (kept[k] > 0) {
        nodes.add(plain.likelihood().solve(models.get(k)).withWeight(weight * kept[k]));
      }
    }
  }

  /** The likeliest set, and where few sites are near a tie each of these both ways. */
  private List<boolean[][]> sets(boolean[][] best, double[][] odds, boolean[][] held) {
    List<int[]> ties = new ArrayList<>();
    for (int part = 0; part < odds.length && data.siteCount() < FEW_SITES; part++) {
      for (int s = 0; s < odds[part].length; s++) {
        if (Math.abs(odds[part][s]) < TIE && !held[part][s]) {
          ties.add(new int[] {part, s});
        }
      }
    }
    ties.sort(Comparator.comparingDouble(t -> Math.abs(odds[t[0]][t[1]])));
    List<int[]> used = ties.subList(0, Math.min(TIES, ties.size()));
    List<boolean[][]> sets = new ArrayList<>();
    for (int way = 0; way < 1 << used.size(); way++) {
      boolean[][] set = Doubt.copy(best);
      for (int t = 0; t < used.size(); t++) {
        set[used.get(t)[0]][used.get(t)[1]] ^= (way >> t & 1) == 1;
      }
      sets.add(set);
    }
    return sets;
  }

  private Modelled withNodes(State best, List<Solved> nodes) {
    double sum = nodes.stream().mapToDouble(Solved::weight).sum();
    List<Solved> weighted = nodes.stream().map(n -> n.withWeight(n.weight() / sum)).toList();
    Likelihood likelihood = new Likelihood(Doubt.with(data, best.doubtful, Doubt.TAU));
    return Modelled.doubting(plain, likelihood, best.likeliest, weighted);
  }

  private List<Site> sites(State best, double[][] chance) {
    List<int[]> in = new ArrayList<>();
    for (int part = 0; part < chance.length; part++) {
      for (int s = 0; s < chance[part].length; s++) {
        if (chance[part][s] > 0.5) {
          in.add(new int[] {part, s});
        }
      }
    }
    return sites(best, in, at -> chance[at[0]][at[1]], false);
  }

  private List<Site> supported(State best, boolean[][] which) {
    List<int[]> in = new ArrayList<>();
    for (int part = 0; part < which.length; part++) {
      for (int s = 0; s < which[part].length; s++) {
        if (which[part][s]) {
          in.add(new int[] {part, s});
        }
      }
    }
    return sites(best, in, at -> 1, true);
  }

  /** What the others say of some sites, the doubtful ones among them with their error. */
  private List<Site> sites(
      State best, List<int[]> in, ToDoubleFunction<int[]> chance, boolean supported) {
    Likelihood likelihood = new Likelihood(Doubt.with(data, best.doubtful, Doubt.TAU));
    List<Solved> nodes = new ArrayList<>();
    for (int k = 0; k < best.models.size() && !in.isEmpty(); k++) {
      nodes.add(likelihood.solve(best.models.get(k)).withWeight(best.weights[k]));
    }
    List<Optional<LeftOut>> left =
        new LeaveOneOut(data, nodes)
            .krigingAt(in, at -> best.doubtful[at[0]][at[1]] ? Doubt.TAU * Doubt.TAU : 0);
    List<Site> sites = new ArrayList<>();
    for (int i = 0; i < in.size(); i++) {
      int[] at = in.get(i);
      double likely = chance.applyAsDouble(at);
      left.get(i).ifPresent(l -> sites.add(new Site(at[0], at[1], likely, l, supported)));
    }
    return sites;
  }
}
