package fieldsalt.plan;

import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.soil.FieldGround;
import fieldsalt.plan.soil.PlanInput;
import fieldsalt.plan.soil.SoilProperties;
import fieldsalt.plan.soil.ZoneGround;
import fieldsalt.read.sample.Sample;
import fieldsalt.surface.Surface;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Inputs of the plan from plain lists. */
public final class PlanInputs {
  private PlanInputs() {}

  /** Zones and samples sorted into their fields; the zones' means from the surface. */
  public static PlanInput of(
      List<ZoneGround> zones,
      List<FieldGround> fields,
      Surface ece,
      SoilProperties soil,
      List<Sample> samples,
      long seed) {
    Map<String, List<ZoneGround>> byField =
        zones.stream()
            .collect(
                Collectors.groupingBy(
                    z -> z.zone().field(), LinkedHashMap::new, Collectors.toList()));
    return new PlanInput(
        byField,
        fields,
        ece,
        field -> ece.areaMeans(byField.get(field).stream().map(ZoneGround::points).toList()),
        Optional.empty(),
        soil,
        samples.stream().collect(Collectors.groupingBy(Sample::field)),
        seed);
  }

  /** The same with the settings of every field. */
  static PlanInput with(PlanInput input, PlanSettings settings) {
    return new PlanInput(
        input.zones(),
        input.fields().stream()
            .map(f -> new FieldGround(f.field(), f.crop(), f.soil(), f.evidence(), settings))
            .toList(),
        input.ece(),
        input.eceMeans(),
        input.eceToReclaim(),
        input.soil(),
        input.samples(),
        input.seed());
  }
}
