package fieldsalt.plan.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.geo.PlaceM;
import fieldsalt.plan.FixedSurface;
import fieldsalt.surface.area.JointMeans;
import fieldsalt.surface.site.Target;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class JointLognormalTest {
  private static final double[] LOG_MEAN = {Math.log(2), Math.log(4), Math.log(8)};
  private static final double[][] P = {{.10, .06, .02}, {.06, .12, .05}, {.02, .05, .15}};

  private static int cell(Target t) {
    return (int) t.place().xM();
  }

  /**
   * Lognormal zone mean of three cells (worked out from the moments): cell means 2.10254, 4.24735,
   * 8.62307; mean 4.99099, sd 1.50522; 5, 50 and 95 % of the match 2.9411, 4.7784, 7.7634.
   */
  @Test
  void momentsOfAZoneMean() {
    FixedSurface surface =
        new FixedSurface(t -> LOG_MEAN[cell(t)], (a, b) -> P[cell(a)][cell(b)], 0);
    List<Target> cells =
        List.of(0, 1, 2).stream().map(x -> new Target("f", new PlaceM(x, 0))).toList();
    JointMeans means = surface.areaMeans(List.of(cells));
    assertThat(means.mean()[0]).isCloseTo(4.99099, within(0.000005));
    assertThat(Math.sqrt(means.covariance()[0][0])).isCloseTo(1.50522, within(0.000005));
    double[] each = {2.10254, 4.24735, 8.62307};
    double independent = 0;
    for (int k = 0; k < 3; k++) {
      JointMeans cell = surface.areaMeans(List.of(List.of(cells.get(k))));
      assertThat(cell.mean()[0]).isCloseTo(each[k], within(0.000005));
      independent += cell.covariance()[0][0] / 9;
    }
    assertThat(Math.sqrt(independent))
        .as("cells taken as independent would claim too much")
        .isCloseTo(1.2823, within(0.00005));
    double[] drawn =
        new JointLognormal(means.mean(), means.covariance(), new double[1][0])
            .draw(new Draws(1), new double[0][])[0];
    Arrays.sort(drawn);
    assertThat((drawn[199] + drawn[200]) / 2).isCloseTo(2.9411, within(0.0005));
    assertThat((drawn[1999] + drawn[2000]) / 2).isCloseTo(4.7784, within(0.0005));
    assertThat((drawn[3799] + drawn[3800]) / 2).isCloseTo(7.7634, within(0.0005));
  }

  @Test
  void drawsHaveTheMomentsAndMoveTogether() {
    double[] mean = {4, 9};
    double[][] covariance = {{1, 1.2}, {1.2, 4}};
    double[][] drawn =
        new JointLognormal(mean, covariance, new double[2][0]).draw(new Draws(1), new double[0][]);
    assertThat(Draws.mean(drawn[0])).isCloseTo(4, within(0.01));
    assertThat(Draws.mean(drawn[1])).isCloseTo(9, within(0.03));
    assertThat(Draws.sd(drawn[0])).isCloseTo(1, within(0.02));
    assertThat(Draws.sd(drawn[1])).isCloseTo(2, within(0.05));
    double sum = 0;
    for (int d = 0; d < Draws.COUNT; d++) {
      sum += (drawn[0][d] - 4) * (drawn[1][d] - 9);
    }
    assertThat(sum / Draws.COUNT).isCloseTo(1.2, within(0.1));
  }

  /** Covariance of lognormals with ln covariance c: M N (exp(c) - 1). */
  @Test
  void fieldsDrawnOneAfterAnotherMoveTogetherByWhatTheyShare() {
    Futures futures = new Futures(7);
    double[][] shared = {{0.3, 0.1}};
    double[][] scores = futures.shared(Futures.Kind.SALT, 2);
    JointLognormal field = new JointLognormal(new double[] {5}, new double[][] {{4}}, shared);
    double[] one = field.draw(futures.field("one"), scores)[0];
    double[] two = field.draw(futures.field("two"), scores)[0];
    double sum = 0;
    for (int d = 0; d < Draws.COUNT; d++) {
      sum += (one[d] - 5) * (two[d] - 5);
    }
    assertThat(sum / Draws.COUNT).isCloseTo(25 * Math.expm1(0.1), within(0.2));
    assertThat(Draws.sd(one)).isCloseTo(2, within(0.05));
    double[] alone = field.draw(futures.field("two"), futures.shared(Futures.Kind.ESP, 2))[0];
    assertThat(correlation(one, alone)).isBetween(-0.05, 0.05);
  }

  private static double correlation(double[] a, double[] b) {
    double sum = 0;
    for (int d = 0; d < a.length; d++) {
      sum += (a[d] - Draws.mean(a)) * (b[d] - Draws.mean(b)) / a.length;
    }
    return sum / Draws.sd(a) / Draws.sd(b);
  }

  /** What is shared cannot be more than the whole: the shared part gives way. */
  @Test
  void aSharedPartLargerThanTheWholeIsMadeSmaller() {
    double[][] shared = {{0.5}, {0.1}};
    double[][] covariance = {{1, 0}, {0, 1}};
    double[][] drawn =
        new JointLognormal(new double[] {5, 5}, covariance, shared)
            .draw(new Draws(1), new Futures(1).shared(Futures.Kind.SALT, 1));
    assertThat(Draws.sd(drawn[0])).isCloseTo(1, within(0.03));
    assertThat(Draws.sd(drawn[1])).isCloseTo(1, within(0.03));
  }

  @Test
  void zonesThatShareAllTheirErrorMoveAsOne() {
    double[][] drawn =
        new JointLognormal(new double[] {5, 5}, new double[][] {{1, 1}, {1, 1}}, new double[2][0])
            .draw(new Draws(1), new double[0][]);
    for (int d = 0; d < Draws.COUNT; d += 97) {
      assertThat(drawn[1][d]).isCloseTo(drawn[0][d], within(1e-3));
    }
  }

  @Test
  void quantilesOfKnownDraws() {
    Odds odds = Odds.of(new Draws(1).standard());
    assertThat(odds.p10()).isCloseTo(-1.2816, within(0.001));
    assertThat(odds.p50()).isCloseTo(0, within(0.001));
    assertThat(odds.p90()).isCloseTo(1.2816, within(0.001));
    assertThat(odds.mean()).isCloseTo(0, within(1e-6));
  }
}
