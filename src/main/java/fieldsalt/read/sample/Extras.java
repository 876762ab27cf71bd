package fieldsalt.read.sample;

import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What only some sheets bring, each as given.
 *
 * @param property the value of the column that the job names as {@code property}; empty for EC
 * @param gypsumRequirementMgHa the laboratory's own gypsum requirement
 * @param lime free lime in the laboratory's words ({@code +}, {@code ++}), or empty text
 * @param cores mixed in a composite sample, at least 1
 */
public record Extras(
    OptionalDouble property,
    OptionalDouble gypsumRequirementMgHa,
    String lime,
    OptionalInt cores) {}
