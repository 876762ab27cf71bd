package fieldsalt.plan.soil;

import fieldsalt.facts.Crop;
import fieldsalt.plan.setting.PlanSettings;
import java.util.Optional;

/**
 * A field with its crop, its soil, how firmly its map stands, and the settings of its plan.
 *
 * @param settings those of the ranch, with what is said of this field alone
 */
public record FieldGround(
    String field,
    Optional<Crop> crop,
    FieldSoil soil,
    FieldEvidence evidence,
    PlanSettings settings) {}
