package fieldsalt.basis;

import fieldsalt.read.Sample;
import java.util.List;
import java.util.function.Function;

/** Entry of the stage: laboratory readings to ECe with its errors. */
public final class Basis {
  private Basis() {}

  /**
   * Every usable reading as ECe with its 90 % interval, and the factors before and after pairs.
   *
   * @param samples rows as read, with or without places
   */
  public static Converted convert(List<Sample> samples, BasisSettings settings) {
    return new Convert(samples, settings).converted();
  }

  /**
   * Readings for the surface: converted layer by layer, then averaged over each field's root zone.
   *
   * @param samples rows as read; those without a place (composites) take no part
   * @param rootZone of a field, by its name
   * @return one row per site and method; values are ln ECe (dS/m) with published factors
   */
  public static SiteReadings siteReadings(
      List<Sample> samples, BasisSettings settings, Function<String, RootZone> rootZone) {
    return rootZoneReadings(samples, settings, rootZone).readings();
  }

  /** The same, with what depth each field's readings stand for. */
  public static RootZoneReadings rootZoneReadings(
      List<Sample> samples, BasisSettings settings, Function<String, RootZone> rootZone) {
    return new HandOver(samples, settings).rootZone(rootZone);
  }
}
