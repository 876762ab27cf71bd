package fieldsalt.plan.setting;

import fieldsalt.finding.InputProblem;
import fieldsalt.finding.InputProblem.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Everything that a user may set for the plan; the job's keys of the same names. */
public record PlanSettings(
    WaterSettings water,
    GroundSettings ground,
    LeachingSettings leaching,
    GypsumSettings gypsum,
    MachineSettings machine,
    MoneySettings money,
    CropSettings crops) {

  public static PlanSettings defaults() {
    return new PlanSettings(
        WaterSettings.defaults(),
        GroundSettings.defaults(),
        LeachingSettings.defaults(),
        GypsumSettings.defaults(),
        MachineSettings.defaults(),
        MoneySettings.defaults(),
        CropSettings.defaults());
  }

  /** Everything that cannot be planned with, each with its remedy; empty if all is well. */
  public List<Problem> problems() {
    List<Problem> problems = new ArrayList<>(money.prices().problems());
    Range.check(problems, "water: ec-dS-m", water.ecDsPerM(), 0, 50, "dS/m");
    Range.check(problems, "water: sar", water.sar(), 0, 500, "");
    Range.check(problems, "water: season-et-mm", water.seasonEtMm(), 0, 5000, "mm");
    Range.check(problems, "water: rain-mm", OptionalDouble.of(water.rainMm()), 0, 10000, "mm");
    Range.above(problems, "water: efficiency-pct", water.efficiencyPct(), 100, "%");
    Range.above(problems, "leaching: target-ece", leaching.targetEce(), 60, "dS/m");
    Range.above(problems, "leaching: depth-cm", leaching.depthCm(), 300, "cm");
    Range.above(
        problems,
        "leaching: tolerable-yield-pct",
        OptionalDouble.of(leaching.tolerableYieldPct()),
        100,
        "%");
    Range.check(
        problems, "gypsum: target-esp", OptionalDouble.of(gypsum.targetEspPct()), 0, 40, "%");
    Range.above(problems, "gypsum: depth-cm", OptionalDouble.of(gypsum.depthCm()), 100, "cm");
    Range.above(problems, "gypsum: purity-pct", gypsum.purityPct(), 100, "%");
    Range.check(
        problems, "gypsum: moisture-pct", OptionalDouble.of(gypsum.moisturePct()), 0, 60, "%");
    Range.above(problems, "gypsum: cap-t-ha", OptionalDouble.of(gypsum.capTPerHa()), 100, "t/ha");
    Range.check(
        problems, "gypsum: min-t-ha", OptionalDouble.of(gypsum.minTPerHa()), 0, 100, "t/ha");
    Range.above(problems, "act-above", OptionalDouble.of(money.actAbove()), 1, "");
    Range.above(problems, "years", OptionalDouble.of(money.years()), 50, "years");
    checkMachine(problems);
    return List.copyOf(problems);
  }

  private void checkMachine(List<Problem> problems) {
    Range.check(problems, "machine: min", machine.min(), 0, 1000, "t/ha");
    Range.above(problems, "machine: max", machine.max(), 1000, "t/ha");
    Range.above(problems, "machine: step", machine.step(), 1000, "t/ha");
    double min = machine.min().orElse(0);
    double max = machine.max().orElse(1000);
    if (min > max) {
      problems.add(
          new Problem(
              "job key machine: min",
              min + " t/ha, above machine: max " + max + " t/ha",
              "min no larger than max",
              "Exchange them."));
    }
  }

  /**
   * Checks the settings against one another.
   *
   * @throws InputProblem naming everything that cannot be planned with
   */
  public void refuseProblems() {
    List<Problem> problems = problems();
    if (!problems.isEmpty()) {
      throw new InputProblem(problems);
    }
  }
}
