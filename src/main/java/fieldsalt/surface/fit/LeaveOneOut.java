package fieldsalt.surface.fit;

import fieldsalt.gaussian.LeaveOut;
import fieldsalt.gaussian.NotPositiveDefinite;
import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.IdwRule;
import fieldsalt.surface.site.Observations;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Leave-one-out by site: all rows of a site go at once, nothing is refitted. Fields with fewer than
 * 3 sites are not judged.
 */
public final class LeaveOneOut {
  private static final int FEWEST_SITES = 3;
  private final Observations data;
  private final List<Solved> nodes;

  public LeaveOneOut(Observations data, List<Solved> nodes) {
    this.data = data;
    this.nodes = nodes;
  }

  /** The error of one site, and its variance, under one node. */
  private record Miss(double error, double variance) {}

  /**
   * Of kriging, for some sites, in their order; empty for one that the others do not determine.
   *
   * @param sites part and site of each
   * @param less variance of a site's own error that is not meant
   */
  List<Optional<LeftOut>> krigingAt(List<int[]> sites, ToDoubleFunction<int[]> less) {
    List<LeaveOut> leave = nodes.stream().map(Solved::leaveOut).toList();
    List<Optional<LeftOut>> all = new ArrayList<>();
    for (int[] at : sites) {
      FieldRows rows = data.parts().get(at[0]);
      int[] members = rows.rowsOf(at[1]);
      int best = rows.bestOf(members);
      all.add(
          one(
              (node, part, site) -> {
                LeaveOut.Errors errors = leave.get(node).errors(part, members);
                double variance = errors.covariance()[best][best] - less.applyAsDouble(at);
                return new Miss(errors.error()[best], variance);
              },
              at[0],
              at[1]));
    }
    return all;
  }

  private interface OneSite {
    Miss at(int node, int part, int site);
  }

  private List<LeftOut> all(OneSite rule) {
    return IntStream.range(0, data.parts().size())
        .parallel()
        .mapToObj(part -> ofPart(rule, part))
        .flatMap(List::stream)
        .toList();
  }

  private List<LeftOut> ofPart(OneSite rule, int part) {
    List<LeftOut> out = new ArrayList<>();
    int sites = data.parts().get(part).sites().size();
    for (int site = 0; sites >= FEWEST_SITES && site < sites; site++) {
      one(rule, part, site).ifPresent(out::add);
    }
    return out;
  }

  private Optional<LeftOut> one(OneSite rule, int part, int site) {
    FieldRows rows = data.parts().get(part);
    int[] members = rows.rowsOf(site);
    double value = rows.rows().get(members[rows.bestOf(members)]).value();
    double[] weight = new double[nodes.size()];
    double[] mean = new double[nodes.size()];
    double[] sd = new double[nodes.size()];
    try {
      for (int k = 0; k < weight.length; k++) {
        Miss e = rule.at(k, part, site);
        weight[k] = nodes.get(k).weight();
        mean[k] = value - e.error();
        sd[k] = Math.sqrt(Math.max(0, e.variance()));
      }
    } catch (NotPositiveDefinite undetermined) {
      return Optional.empty();
    }
    return Optional.of(new LeftOut(part, site, value, new Mixture(weight, mean, sd)));
  }

  /** Of kriging (with drift, if the data have one). */
  public List<LeftOut> kriging() {
    List<LeaveOut> leave = nodes.parallelStream().map(Solved::leaveOut).toList();
    return all(
        (node, part, site) -> {
          FieldRows rows = data.parts().get(part);
          int[] members = rows.rowsOf(site);
          LeaveOut.Errors errors = leave.get(node).errors(part, members);
          int best = rows.bestOf(members);
          return new Miss(errors.error()[best], errors.covariance()[best][best]);
        });
  }

  /** Of the field's mean, whose errors the nodes state. */
  public List<LeftOut> mean(Solved uncorrelated) {
    LeaveOut leave = uncorrelated.leaveOut();
    List<double[][]> carriers =
        IntStream.range(0, data.parts().size())
            .mapToObj(uncorrelated.solution()::sharedDual)
            .toList();
    List<LinearErrors> errors = errors(carriers::get);
    return all(
        (node, part, site) -> {
          FieldRows rows = data.parts().get(part);
          int[] members = rows.rowsOf(site);
          int best = rows.bestOf(members);
          return miss(
              errors.get(node),
              part,
              leave.rule(part, members, best),
              leave.sharedWeights(part, members, best));
        });
  }

  private List<LinearErrors> errors(IntFunction<double[][]> carriers) {
    return nodes.stream().map(node -> new LinearErrors(node, carriers)).toList();
  }

  /** Of inverse distance squared. */
  public List<LeftOut> idw() {
    List<LinearErrors> errors = errors(part -> new double[0][]);
    return all(
        (node, part, site) -> miss(errors.get(node), part, idwRule(part, site), new double[0]));
  }

  private double[] idwRule(int part, int site) {
    FieldRows rows = data.parts().get(part);
    double[] share = IdwRule.rowShares(rows);
    double[] bySite = IdwRule.siteWeights(rows, rows.x()[site], rows.y()[site], site);
    double[] rule = new double[share.length];
    for (int r = 0; r < share.length; r++) {
      rule[r] = -bySite[rows.siteOf()[r]] * share[r];
    }
    int[] members = rows.rowsOf(site);
    rule[members[rows.bestOf(members)]] = 1;
    return rule;
  }

  private static Miss miss(LinearErrors errors, int part, double[] l, double[] g) {
    return new Miss(errors.value(part, l, g), errors.variance(part, l, g));
  }
}
