package fieldsalt.basis.property;

import fieldsalt.basis.site.Scale;

/**
 * A soil property that is mapped or planned with, other than ECe. Errors of one value are standard
 * deviations: of the natural logarithm on scale LOG, in the unit on scale NATURAL. SAR, CEC and
 * their shared parts after the settings; the others common practice.
 */
public enum SoilProperty {
  /** Of the saturation extract only. */
  SAR("SAR", "", Scale.LOG, 0.10),
  /** Measured, or from exchangeable sodium and CEC; never from SAR. */
  ESP("ESP", "%", Scale.LOG, 0.15),
  CEC("CEC", "cmolc/kg", Scale.LOG, 0.10),
  CLAY("clay", "%", Scale.NATURAL, 3),
  BULK_DENSITY("bulk density", "Mg/m3", Scale.NATURAL, 0.05),
  SP("saturation percentage", "%", Scale.LOG, 0.08),
  GYPSUM("gypsum", "%", Scale.NATURAL, 0.5),
  PH("pH", "", Scale.NATURAL, 0.1),
  BORON("boron", "mg/L", Scale.LOG, 0.15),
  CHLORIDE("chloride", "meq/L", Scale.LOG, 0.10);

  private final String label;
  private final String unit;
  private final Scale scale;
  private final double ownError;

  SoilProperty(String label, String unit, Scale scale, double ownError) {
    this.label = label;
    this.unit = unit;
    this.scale = scale;
    this.ownError = ownError;
  }

  /** For people. */
  public String label() {
    return label;
  }

  public String unit() {
    return unit;
  }

  public Scale scale() {
    return scale;
  }

  double ownError() {
    return ownError;
  }
}
