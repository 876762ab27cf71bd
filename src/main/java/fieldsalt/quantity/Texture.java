package fieldsalt.quantity;

/**
 * Texture as a laboratory or a field book names it: the twelve USDA classes, the field grades that
 * need their own factor, group words, and unknown. Grouping: USDA (coarse = sand, loamy sand, sandy
 * loam; medium = loam, silt loam, silt, sandy clay loam; fine = clay loam and finer), common
 * practice.
 */
public enum Texture {
  SAND(TextureGroup.COARSE),
  LOAMY_SAND(TextureGroup.COARSE),
  SANDY_LOAM(TextureGroup.COARSE),
  LOAM(TextureGroup.MEDIUM),
  SILT_LOAM(TextureGroup.MEDIUM),
  SILT(TextureGroup.MEDIUM),
  SANDY_CLAY_LOAM(TextureGroup.MEDIUM),
  CLAY_LOAM(TextureGroup.FINE),
  SILTY_CLAY_LOAM(TextureGroup.FINE),
  SANDY_CLAY(TextureGroup.FINE),
  SILTY_CLAY(TextureGroup.FINE),
  CLAY(TextureGroup.FINE),
  LIGHT_CLAY(TextureGroup.FINE),
  MEDIUM_CLAY(TextureGroup.FINE),
  HEAVY_CLAY(TextureGroup.FINE),
  COARSE(TextureGroup.COARSE),
  MEDIUM(TextureGroup.MEDIUM),
  FINE(TextureGroup.FINE),
  UNKNOWN(TextureGroup.UNKNOWN);

  private final TextureGroup group;

  Texture(TextureGroup group) {
    this.group = group;
  }

  public TextureGroup group() {
    return group;
  }
}
