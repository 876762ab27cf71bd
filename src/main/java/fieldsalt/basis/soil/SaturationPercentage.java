package fieldsalt.basis.soil;

import fieldsalt.quantity.Texture;
import fieldsalt.read.sample.Soil;
import java.util.OptionalDouble;

/** Saturation percentage (g water per 100 g dry soil) from clay, where nobody measured it. */
public final class SaturationPercentage {
  private SaturationPercentage() {}

  /**
   * SP = 0.76 clay % + 27.25: Rhoades, Chanduvi &amp; Lesch 1999, FAO Irrigation and Drainage Paper
   * 57 (from memory). Hand-mixed pastes.
   */
  public static double handMixed(double clayPct) {
    return 0.76 * clayPct + 27.25;
  }

  /**
   * SP = 0.86 clay % + 14.5, 10-80 % clay: derived from Rayment &amp; Lyons 2011 table 3.1 through
   * the formula of Slavich &amp; Petterson 1993. Capillary wetting.
   */
  public static double capillary(double clayPct) {
    return 0.86 * clayPct + 14.5;
  }

  /** Water at field capacity (−33 kPa), about half of SP; loam to clay loam, %. */
  public static double fieldCapacity(double spPct) {
    return spPct / 2;
  }

  /** Water at the wilting point (−1500 kPa), about a quarter of SP; loam to clay loam, %. */
  public static double wiltingPoint(double spPct) {
    return spPct / 4;
  }

  /** Hand-mixed SP that clay or texture lets expect; empty if neither is known. */
  public static OptionalDouble expected(Soil soil) {
    if (soil.clayPct().isPresent()) {
      return OptionalDouble.of(handMixed(soil.clayPct().getAsDouble()));
    }
    OptionalDouble clay = typicalClayPct(soil.texture());
    return clay.isPresent() ? OptionalDouble.of(handMixed(clay.getAsDouble())) : clay;
  }

  /** Clay % in the middle of a texture class (USDA triangle); empty for unknown. */
  private static OptionalDouble typicalClayPct(Texture texture) {
    return switch (texture) {
      case SAND -> OptionalDouble.of(3);
      case LOAMY_SAND, SILT -> OptionalDouble.of(6);
      case SANDY_LOAM, COARSE -> OptionalDouble.of(10);
      case LOAM, MEDIUM -> OptionalDouble.of(18);
      case SILT_LOAM -> OptionalDouble.of(15);
      case SANDY_CLAY_LOAM -> OptionalDouble.of(27);
      case CLAY_LOAM, SILTY_CLAY_LOAM -> OptionalDouble.of(34);
      case SANDY_CLAY, LIGHT_CLAY, FINE -> OptionalDouble.of(42);
      case SILTY_CLAY, MEDIUM_CLAY -> OptionalDouble.of(48);
      case CLAY -> OptionalDouble.of(55);
      case HEAVY_CLAY -> OptionalDouble.of(65);
      case UNKNOWN -> OptionalDouble.empty();
    };
  }
}
