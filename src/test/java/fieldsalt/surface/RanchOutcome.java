package fieldsalt.surface;

import fieldsalt.surface.area.JointMeans;
import fieldsalt.surface.map.PointDistribution;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * How a surface of a ranch with a known truth did. Shares are of 90 % intervals that held the
 * truth; squares are mean squared errors of ln ECe at points and of ln of the mean ECe of areas.
 *
 * @param zones of fixed places
 * @param drawn zones drawn from the map itself: the third with the lowest median, the middle, the
 *     highest; the whole ranch where the map is flat
 */
record RanchOutcome(String chosen, Figures points, Figures zones, Figures drawn, Figures ranch) {
  private static final double LOW = 0.05;

  /** Share held and mean squared error. */
  public record Figures(double share, double square) {
    static Figures of(boolean held, double error) {
      return new Figures(held ? 1 : 0, error * error);
    }

    static Figures mean(List<Figures> figures) {
      return new Figures(
          figures.stream().mapToDouble(Figures::share).average().orElseThrow(),
          figures.stream().mapToDouble(Figures::square).average().orElseThrow());
    }
  }

  static RanchOutcome of(FittedSurface surface, RanchCase ranch) {
    List<Target> targets = ranch.targets(0);
    double[] truth = ranch.truth().get(0);
    List<PointDistribution> known = surface.at(targets);
    double[] medians = known.stream().mapToDouble(PointDistribution::median).toArray();
    return new RanchOutcome(
        surface.report().chosen().label(),
        points(known, truth),
        areas(surface, targets, truth, ReferenceRanch.squares()),
        areas(surface, targets, truth, thirds(medians)),
        areas(surface, targets, truth, List.of(everything(truth.length))));
  }

  private static int[] everything(int size) {
    return IntStream.range(0, size).toArray();
  }

  private static Figures points(List<PointDistribution> known, double[] truth) {
    List<Figures> figures = new ArrayList<>();
    for (int i = 0; i < truth.length; i += 2) {
      PointDistribution p = known.get(i);
      double value = Math.exp(truth[i]);
      boolean held = value > p.quantile(LOW) && value < p.quantile(1 - LOW);
      figures.add(Figures.of(held, Math.log(p.median()) - truth[i]));
    }
    return Figures.mean(figures);
  }

  private static Figures areas(
      Surface surface, List<Target> targets, double[] truth, List<int[]> areas) {
    List<Figures> figures = new ArrayList<>();
    for (int[] area : areas) {
      JointMeans mean =
          surface.areaMeans(List.of(Arrays.stream(area).mapToObj(targets::get).toList()));
      double value =
          Arrays.stream(area).mapToDouble(i -> Math.exp(truth[i])).average().orElseThrow();
      boolean held = value > mean.low()[0] && value < mean.high()[0];
      figures.add(Figures.of(held, Math.log(mean.mean()[0] / value)));
    }
    return Figures.mean(figures);
  }

  private static List<int[]> thirds(double[] medians) {
    double[] sorted = medians.clone();
    Arrays.sort(sorted);
    int n = medians.length;
    if (sorted[n - 1] - sorted[0] < 1e-9 * sorted[n - 1]) {
      return List.of(everything(n));
    }
    List<Integer> order =
        new ArrayList<>(
            IntStream.range(0, n)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> medians[i]))
                .toList());
    List<int[]> thirds = new ArrayList<>();
    for (int t = 0; t < 3; t++) {
      thirds.add(order.subList(t * n / 3, (t + 1) * n / 3).stream().mapToInt(i -> i).toArray());
    }
    return thirds;
  }
}
