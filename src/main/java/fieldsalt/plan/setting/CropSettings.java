package fieldsalt.plan.setting;

import fieldsalt.classes.MaasHoffman1977;
import fieldsalt.classes.Steppuhn2005;
import fieldsalt.classes.YieldModel;
import fieldsalt.facts.Crop;
import fieldsalt.facts.Crops;
import java.util.List;

/**
 * Crops to compare and the shape of their response.
 *
 * @param compare crops of the table crops x zones; twelve common ones by default
 */
public record CropSettings(List<Crop> compare, Curve curve) {
  /** Threshold and slope, or the S-curve converted from them. */
  public enum Curve {
    THRESHOLD,
    S_CURVE
  }

  public CropSettings {
    compare = List.copyOf(compare);
  }

  public static CropSettings defaults() {
    return new CropSettings(Crops.standard().twelve(), Curve.THRESHOLD);
  }

  public CropSettings withCompare(List<Crop> crops) {
    return new CropSettings(crops, curve);
  }

  public CropSettings withCurve(Curve other) {
    return new CropSettings(compare, other);
  }

  /** The response of a crop with numbers; on gypsiferous soil its threshold is 2 dS/m higher. */
  public YieldModel model(Crop.Tolerance tolerance, boolean gypsiferous) {
    MaasHoffman1977 lines = MaasHoffman1977.of(tolerance, gypsiferous);
    return curve == Curve.S_CURVE ? Steppuhn2005.of(lines) : lines;
  }
}
