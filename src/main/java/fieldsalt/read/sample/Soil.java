package fieldsalt.read.sample;

import fieldsalt.quantity.Texture;
import java.util.OptionalDouble;

/** Soil properties of one row, each as given; empty where the sheet says nothing. */
public record Soil(
    Texture texture,
    OptionalDouble clayPct,
    OptionalDouble spPct,
    OptionalDouble gypsumPct,
    OptionalDouble limePct,
    OptionalDouble omPct,
    OptionalDouble bulkDensityMgM3,
    OptionalDouble cecCmolKg,
    OptionalDouble ph) {
  /** Nothing known. */
  public static Soil unknown() {
    OptionalDouble none = OptionalDouble.empty();
    return new Soil(Texture.UNKNOWN, none, none, none, none, none, none, none, none);
  }

  public Soil withTexture(Texture other, OptionalDouble clay) {
    return new Soil(other, clay, spPct, gypsumPct, limePct, omPct, bulkDensityMgM3, cecCmolKg, ph);
  }
}
