package fieldsalt.surface.next;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * What to measure next, best first, and where the errors stand before anything is measured.
 *
 * @param ranchErrorNow standard error of the ranch's mean on the scale of the fit
 * @param worstZoneErrorNow the largest standard error of a zone's mean on that scale
 * @param alike whether all are new sites of about the same worth, so that no single place stands
 *     out
 */
public record Proposals(
    double ranchErrorNow, double worstZoneErrorNow, List<Proposal> best, boolean alike) {
  /** Fewer proposals are no crowd. */
  private static final int CROWD = 5;

  private static final double NEARLY = 0.8;

  public Proposals {
    best = List.copyOf(best);
  }

  /** Proposals that are judged alike by themselves. */
  public Proposals(double ranchErrorNow, double worstZoneErrorNow, List<Proposal> best) {
    this(ranchErrorNow, worstZoneErrorNow, best, isCrowd(best));
  }

  private static boolean isCrowd(List<Proposal> best) {
    return best.size() >= CROWD
        && best.stream().allMatch(p -> p.kind() == Proposal.Kind.NEW_SITE)
        && best.get(best.size() - 1).worth() >= NEARLY * best.get(0).worth();
  }

  /**
   * These and what else is asked for, in one order of worth; readings in doubt stay first.
   *
   * @param asks of the plan
   * @param count at most so many in all
   */
  public Proposals with(List<Proposal> asks, int count) {
    List<Proposal> all = new ArrayList<>();
    List<Proposal> others = new ArrayList<>(asks);
    others.sort(Comparator.comparingDouble(p -> -p.worth()));
    double ranch = ranchErrorNow;
    double worst = worstZoneErrorNow;
    int mine = 0;
    int other = 0;
    while (all.size() < count && (mine < best.size() || other < others.size())) {
      boolean ask =
          other < others.size()
              && (mine == best.size() || others.get(other).worth() > best.get(mine).worth());
      Proposal next = ask ? others.get(other++).withErrors(ranch, worst) : best.get(mine++);
      ranch = next.ranchErrorAfter();
      worst = next.worstZoneErrorAfter();
      all.add(next);
    }
    return new Proposals(ranchErrorNow, worstZoneErrorNow, all, alike && other == 0);
  }

  /**
   * The proposals of groups of fields, which are searched apart, in one order of gain; the ranch's
   * mean is that of the groups weighted by area.
   *
   * @param area of each group's fields
   */
  public static Proposals merged(List<Proposals> groups, List<Double> area, int count) {
    if (groups.size() == 1) {
      return groups.get(0);
    }
    double whole = area.stream().mapToDouble(a -> a).sum();
    double[] ranch = groups.stream().mapToDouble(Proposals::ranchErrorNow).toArray();
    double[] worst = groups.stream().mapToDouble(Proposals::worstZoneErrorNow).toArray();
    double ranchNow = together(ranch, area, whole);
    double worstNow = Arrays.stream(worst).max().orElse(0);
    int[] taken = new int[ranch.length];
    List<Proposal> best = new ArrayList<>();
    while (best.size() < count) {
      int from = -1;
      for (int g = 0; g < taken.length; g++) {
        boolean open = taken[g] < groups.get(g).best.size();
        if (open
            && (from < 0 || next(groups, taken, g).gain() > next(groups, taken, from).gain())) {
          from = g;
        }
      }
      if (from < 0) {
        break;
      }
      Proposal p = next(groups, taken, from);
      taken[from]++;
      ranch[from] = p.ranchErrorAfter();
      worst[from] = p.worstZoneErrorAfter();
      best.add(p.withErrors(together(ranch, area, whole), Arrays.stream(worst).max().orElse(0)));
    }
    return new Proposals(ranchNow, worstNow, best);
  }

  private static Proposal next(List<Proposals> groups, int[] taken, int group) {
    return groups.get(group).best.get(taken[group]);
  }

  private static double together(double[] errors, List<Double> area, double whole) {
    double sum = 0;
    for (int g = 0; g < errors.length; g++) {
      double part = errors[g] * area.get(g) / whole;
      sum += part * part;
    }
    return Math.sqrt(sum);
  }
}
