package fieldsalt.surface.area;

import fieldsalt.geo.PlaceM;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Points;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/** Targets sorted into their fields. */
public record TargetGroups(List<Points> points, List<int[]> positions, int size) {

  public static TargetGroups of(Observations data, List<Target> targets) {
    TreeMap<Integer, List<Integer>> byPart = new TreeMap<>();
    for (int i = 0; i < targets.size(); i++) {
      int part = data.indexOf(targets.get(i).field());
      if (part < 0) {
        throw new IllegalArgumentException("no surface in field " + targets.get(i).field());
      }
      byPart.computeIfAbsent(part, p -> new ArrayList<>()).add(i);
    }
    List<Points> points = new ArrayList<>();
    List<int[]> positions = new ArrayList<>();
    byPart.forEach(
        (part, members) -> {
          List<PlaceM> places = members.stream().map(i -> targets.get(i).place()).toList();
          points.add(Points.of(data, part, places));
          positions.add(members.stream().mapToInt(i -> i).toArray());
        });
    return new TargetGroups(points, positions, targets.size());
  }

  /** All targets predicted by one predictor. */
  public Joined predict(Predictor predictor) {
    return new Joined(
        this,
        points.stream().map(predictor::predict).toList(),
        predictor.solved().driftVariances());
  }

  /**
   * Predictions of all groups, asked for together.
   *
   * @param driftVariances of drifts that have no value at a target
   */
  public record Joined(
      TargetGroups groups, List<Predictor.Predicted> parts, double[] driftVariances) {
    public double[] mean() {
      double[] mean = new double[groups.size];
      for (int g = 0; g < parts.size(); g++) {
        double[] own = parts.get(g).mean();
        for (int i = 0; i < own.length; i++) {
          mean[groups.positions.get(g)[i]] = own[i];
        }
      }
      return mean;
    }

    /** What fields share, as loadings of each target: effects x targets. */
    double[][] shared() {
      double[][] shared = new double[parts.get(0).shared().length][groups.size];
      for (int g = 0; g < parts.size(); g++) {
        double[][] own = parts.get(g).shared();
        for (int k = 0; k < shared.length; k++) {
          for (int i = 0; i < own[k].length; i++) {
            shared[k][groups.positions.get(g)[i]] = own[k][i];
          }
        }
      }
      return shared;
    }

    /**
     * Covariance with other targets by the same predictor, that of drifts without a value in it;
     * micro-scale is not.
     */
    public double[][] covariance(Joined other) {
      double[][] covariance = new double[groups.size][other.groups.size];
      for (int g = 0; g < parts.size(); g++) {
        for (int h = 0; h < other.parts.size(); h++) {
          double[][] own = parts.get(g).covariance(other.parts.get(h));
          for (int i = 0; i < own.length; i++) {
            for (int j = 0; j < own[i].length; j++) {
              covariance[groups.positions.get(g)[i]][other.groups.positions.get(h)[j]] =
                  own[i][j] + unknown(g, i, other, h, j);
            }
          }
        }
      }
      return covariance;
    }

    private double unknown(int group, int i, Joined other, int otherGroup, int j) {
      Points here = groups.points.get(group);
      Points there = other.groups.points.get(otherGroup);
      return here.part() == there.part() ? here.unknownCovariance(driftVariances, i, there, j) : 0;
    }
  }
}
