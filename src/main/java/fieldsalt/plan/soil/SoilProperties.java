package fieldsalt.plan.soil;

import fieldsalt.surface.SampledProperty;
import java.util.Optional;

/**
 * What is known of sodium and the exchange in the layer to treat; empty where nothing was measured.
 *
 * @param esp exchangeable sodium percentage, soluble sodium deducted
 * @param sar of the saturation extract
 * @param cec cmolc/kg
 * @param bulkDensity Mg/m3
 */
public record SoilProperties(
    Optional<SampledProperty> esp,
    Optional<SampledProperty> sar,
    Optional<SampledProperty> cec,
    Optional<SampledProperty> bulkDensity) {
  public static SoilProperties none() {
    return new SoilProperties(
        Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }
}
