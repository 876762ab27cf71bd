package fieldsalt.plan.soil;

import fieldsalt.quantity.Texture;
import fieldsalt.quantity.TextureGroup;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.read.sample.Sample;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What the samples say of a field's soil besides salt; means over the rows whose layer begins
 * within the layer to treat (boron and chloride: all rows), empty where nothing was measured.
 *
 * @param texture the commonest of the rows, else the field's own
 * @param gypsumPct mean over the layer to treat
 * @param profileGypsumPct mean over every row that has it
 * @param boronMgL mean in the saturation extract
 * @param chlorideMeqL mean in the saturation extract
 * @param laboratoryRequirement the laboratory's own gypsum requirement, t/ha, mean of the layer
 */
public record FieldSoil(
    Texture texture,
    OptionalDouble clayPct,
    OptionalDouble omPct,
    OptionalDouble gypsumPct,
    OptionalDouble profileGypsumPct,
    boolean gypsumSuspected,
    OptionalDouble boronMgL,
    OptionalDouble chlorideMeqL,
    OptionalDouble laboratoryRequirement) {
  /** Ca and SO4 of the paste both above this suggest gypsum, meq/L (from memory). */
  static final double GYPSUM_SATURATED_MEQ_L = 20;

  /** Nothing known. */
  public static FieldSoil unknown() {
    OptionalDouble e = OptionalDouble.empty();
    return new FieldSoil(Texture.UNKNOWN, e, e, e, e, false, e, e, e);
  }

  /**
   * From a field and its samples.
   *
   * @param samples of this field; others are passed over
   * @param treatedDepthCm bottom of the layer to treat
   */
  public static FieldSoil of(FieldBoundary field, List<Sample> samples, double treatedDepthCm) {
    List<Sample> own = samples.stream().filter(s -> s.field().equals(field.name())).toList();
    List<Sample> top = own.stream().filter(s -> s.depth().topCm() < treatedDepthCm).toList();
    OptionalDouble clay = mean(top, s -> s.soil().clayPct());
    return new FieldSoil(
        commonest(top, field.texture()),
        clay.isPresent() ? clay : field.clayPct(),
        mean(top, s -> s.soil().omPct()),
        mean(top, s -> s.soil().gypsumPct()),
        mean(own, s -> s.soil().gypsumPct()),
        own.stream().anyMatch(FieldSoil::suggestsGypsum),
        mean(own, s -> s.ions().boronMgL()),
        mean(own, s -> s.ions().cl()),
        mean(top, s -> s.extras().gypsumRequirementMgHa()));
  }

  private static boolean suggestsGypsum(Sample s) {
    return s.ions().ca().orElse(0) > GYPSUM_SATURATED_MEQ_L
        && s.ions().so4().orElse(0) > GYPSUM_SATURATED_MEQ_L;
  }

  private static OptionalDouble mean(List<Sample> rows, Function<Sample, OptionalDouble> of) {
    return rows.stream()
        .sorted(Comparator.comparing(Sample::id))
        .map(of)
        .filter(OptionalDouble::isPresent)
        .mapToDouble(OptionalDouble::getAsDouble)
        .average();
  }

  /** The commonest texture that is known; the coarser one of equals; else the given one. */
  static Texture commonest(List<Sample> rows, Texture otherwise) {
    Map<Texture, Long> counts =
        rows.stream()
            .map(s -> s.soil().texture())
            .filter(t -> t.group() != TextureGroup.UNKNOWN)
            .collect(Collectors.groupingBy(t -> t, TreeMap::new, Collectors.counting()));
    return counts.entrySet().stream()
        .max(
            Map.Entry.<Texture, Long>comparingByValue()
                .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
        .map(Map.Entry::getKey)
        .orElse(otherwise);
  }

  public FieldSoil withTexture(Texture other) {
    return new FieldSoil(
        other,
        clayPct,
        omPct,
        gypsumPct,
        profileGypsumPct,
        gypsumSuspected,
        boronMgL,
        chlorideMeqL,
        laboratoryRequirement);
  }

  /** Whether gypsum was confirmed in the profile: at least 1 % in the mean of its rows. */
  public boolean isGypsiferous() {
    return profileGypsumPct.isPresent() && profileGypsumPct.getAsDouble() >= 1;
  }
}
