package fieldsalt.surface.fit;

import fieldsalt.gaussian.LeaveOut;
import fieldsalt.gaussian.NotPositiveDefinite;
import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.IdwRule;
import fieldsalt.surface.site.Observations;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

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

  private interface OneSite {
    Miss at(int node, int part, int site);
  }

  private List<LeftOut> all(OneSite rule) {
    List<LeftOut> out = new ArrayList<>();
    for (int part = 0; part < data.parts().size(); part++) {
      int sites = data.parts().get(part).sites().size();
      for (int site = 0; sites >= FEWEST_SITES && site < sites; site++) {
        one(rule, part, site).ifPresent(out::add);
      }
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
    return all(
        (node, part, site) -> {
          FieldRows rows = data.parts().get(part);
          int[] members = rows.rowsOf(site);
          return error(node, leave.rule(part, members, rows.bestOf(members)));
        });
  }

  /** Of inverse distance squared. */
  public List<LeftOut> idw() {
    return all((node, part, site) -> error(node, idwRule(part, site)));
  }

  private double[][] idwRule(int part, int site) {
    double[][] rule = new double[data.parts().size()][];
    for (int p = 0; p < rule.length; p++) {
      rule[p] = new double[data.parts().get(p).rows().size()];
    }
    FieldRows rows = data.parts().get(part);
    double[] share = IdwRule.rowShares(rows);
    double[] bySite = IdwRule.siteWeights(rows, rows.x()[site], rows.y()[site], site);
    for (int r = 0; r < share.length; r++) {
      rule[part][r] = -bySite[rows.siteOf()[r]] * share[r];
    }
    int[] members = rows.rowsOf(site);
    rule[part][members[rows.bestOf(members)]] = 1;
    return rule;
  }

  private Miss error(int node, double[][] rule) {
    double error = 0;
    for (int part = 0; part < rule.length; part++) {
      error += Linear.dot(rule[part], data.parts().get(part).values());
    }
    return new Miss(error, nodes.get(node).variance(rule));
  }
}
