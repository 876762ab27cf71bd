package fieldsalt.basis.soil;

import fieldsalt.quantity.Texture;
import fieldsalt.quantity.TextureGroup;
import fieldsalt.read.sample.Soil;

/**
 * The texture group of a row: its texture word; else its clay (coarse below 15 %, fine from 27 %,
 * the USDA limit of clay loam); else its saturation percentage (coarse below 35, fine above 50,
 * California convention, from memory); else unknown.
 */
public final class SoilGroup {
  private SoilGroup() {}

  public static TextureGroup of(Soil soil) {
    if (soil.texture().group() != TextureGroup.UNKNOWN) {
      return soil.texture().group();
    }
    if (soil.clayPct().isPresent()) {
      return between(soil.clayPct().getAsDouble(), 15, 27);
    }
    if (soil.spPct().isPresent()) {
      return between(soil.spPct().getAsDouble(), 35, 50);
    }
    return TextureGroup.UNKNOWN;
  }

  private static TextureGroup between(double value, double coarseBelow, double fineFrom) {
    if (value < coarseBelow) {
      return TextureGroup.COARSE;
    }
    return value < fineFrom ? TextureGroup.MEDIUM : TextureGroup.FINE;
  }

  /** The group as a texture word, for tables that have rows by group. */
  public static Texture word(TextureGroup group) {
    return switch (group) {
      case COARSE -> Texture.COARSE;
      case MEDIUM -> Texture.MEDIUM;
      case FINE -> Texture.FINE;
      case UNKNOWN -> Texture.UNKNOWN;
    };
  }
}
