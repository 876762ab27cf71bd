package fieldsalt.basis.layer;

import fieldsalt.basis.soil.SoilGroup;
import fieldsalt.quantity.Texture;
import fieldsalt.quantity.TextureGroup;
import fieldsalt.read.sample.Sample;
import fieldsalt.read.sample.Soil;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Texture and clay that one laboratory's row has and another's of the same layer lacks: one soil.
 * The saturation percentage is not carried over, for then only the paired rows would be converted
 * by it and the factor learned from them would not be that of the others.
 */
final class SameBag {
  private SameBag() {}

  static List<Sample> shared(List<Sample> samples) {
    Map<LayerKey, Soil> told = new TreeMap<>();
    for (Sample sample : samples) {
      if (isTold(sample.soil())) {
        told.putIfAbsent(LayerKey.of(sample), sample.soil());
      }
    }
    return samples.stream().map(sample -> filled(sample, told)).toList();
  }

  private static boolean isTold(Soil soil) {
    return soil.texture() != Texture.UNKNOWN || soil.clayPct().isPresent();
  }

  private static Sample filled(Sample sample, Map<LayerKey, Soil> told) {
    if (SoilGroup.of(sample.soil()) != TextureGroup.UNKNOWN || isTold(sample.soil())) {
      return sample;
    }
    Soil twin = told.get(LayerKey.of(sample));
    return twin == null
        ? sample
        : sample.withSoil(sample.soil().withTexture(twin.texture(), twin.clayPct()));
  }
}
