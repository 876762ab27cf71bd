package fieldsalt.plan.setting;

import java.util.OptionalDouble;

/**
 * The spreader; rates in t/ha of product in one pass, empty where the job says nothing.
 *
 * @param step rates are multiples of it
 * @param drafts whether zones of a draft plan go to the machine
 */
public record MachineSettings(
    OptionalDouble min, OptionalDouble max, OptionalDouble step, boolean drafts) {
  public static MachineSettings defaults() {
    return new MachineSettings(
        OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), false);
  }

  public static MachineSettings of(double min, double max, double step) {
    return new MachineSettings(
        OptionalDouble.of(min), OptionalDouble.of(max), OptionalDouble.of(step), false);
  }
}
