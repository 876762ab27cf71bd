package fieldsalt.plan;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.plan.zone.GypsumPlan;
import fieldsalt.plan.zone.ZonePlan;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Whether the stated odds of gypsum are true, on ranches whose truth is known. */
class PlanCoverageTest {
  /** What came of many ranches. */
  private record Outcome(
      int ranches, int covered, int low, int lowTreated, int high, int highTreated) {
    double coverage() {
      return covered / (double) ranches;
    }

    double lowShare() {
      return low == 0 ? 0 : lowTreated / (double) low;
    }

    double highShare() {
      return highTreated / (double) high;
    }

    static double band(double share, int n) {
      return 3 * Math.sqrt(share * (1 - share) / n);
    }
  }

  private static Outcome run(int ranches, long seed, boolean fitted) {
    int[] n = new int[6];
    for (int r = 0; r < ranches; r++) {
      SimulatedRanch ranch = new SimulatedRanch(seed * 1_000_003 + r, r % 2 == 0, fitted);
      RanchPlan plan = ranch.plan();
      double truth = 0;
      List<ZonePlan> zones = plan.zones();
      for (int z = 0; z < zones.size(); z++) {
        boolean treated = zones.get(z).productTPerHa() > 0;
        if (zones.get(z).gypsum().advice() == GypsumPlan.Advice.RECOMMENDED) {
          truth += zones.get(z).zone().areaHa() * ranch.trueNeed(z);
        }
        if (ranch.trueEsp(z) < 5) {
          n[2]++;
          n[3] += treated ? 1 : 0;
        }
        if (ranch.trueEsp(z) > SimulatedRanch.TARGET_PCT + 5) {
          n[4]++;
          n[5] += treated ? 1 : 0;
        }
      }
      if (plan.gypsumT().p10() > 0) {
        n[0]++;
        n[1] += truth >= plan.gypsumT().p10() && truth <= plan.gypsumT().p90() ? 1 : 0;
      }
    }
    return new Outcome(n[0], n[1], n[2], n[3], n[4], n[5]);
  }

  @Test
  void oddsAreTrueOnAHundredRanches() {
    Outcome o = run(100, 1, false);
    assertThat(o.ranches()).isGreaterThan(40);
    assertThat(o.low()).isGreaterThan(20);
    assertThat(o.high()).isGreaterThan(80);
    double band = Outcome.band(0.8, o.ranches());
    assertThat(o.coverage()).as("%s", o).isBetween(0.8 - band, 0.8 + band);
    assertThat(o.lowShare()).isLessThanOrEqualTo(0.05 + Outcome.band(0.05, o.low()));
    assertThat(o.highShare()).as("%s", o).isGreaterThanOrEqualTo(0.9 - Outcome.band(0.9, o.high()));
  }

  /** The whole simulation; its result stands in the methods. */
  @Test
  @Tag("whole")
  void oddsAreTrueOnAThousandRanches() {
    Outcome o = run(1000, 1, false);
    assertThat(o.coverage()).as("%s", o).isBetween(0.77, 0.83);
    assertThat(o.lowShare()).as("%s", o).isLessThanOrEqualTo(0.05);
    assertThat(o.highShare()).as("%s", o).isGreaterThanOrEqualTo(0.90);
  }

  /** The same with the surfaces that the product fits to the readings, variogram and all. */
  @Test
  @Tag("whole")
  void oddsAreTrueWithFittedSurfaces() {
    Outcome o = run(200, 1, true);
    double band = Outcome.band(0.8, o.ranches());
    assertThat(o.coverage()).as("%s", o).isBetween(0.8 - band, 0.8 + band);
    assertThat(o.lowShare()).as("%s", o).isLessThanOrEqualTo(0.05);
    assertThat(o.highShare()).as("%s", o).isGreaterThanOrEqualTo(0.9 - Outcome.band(0.9, o.high()));
  }
}
