package fieldsalt.plan.soil;

import fieldsalt.facts.Crop;
import java.util.Optional;

/** A field with its crop, its soil and how firmly its map stands. */
public record FieldGround(
    String field, Optional<Crop> crop, FieldSoil soil, FieldEvidence evidence) {}
