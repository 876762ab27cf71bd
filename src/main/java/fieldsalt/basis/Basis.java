package fieldsalt.basis;

import fieldsalt.basis.depth.RootZone;
import fieldsalt.basis.pair.ConvertedReadings;
import fieldsalt.basis.pair.ReadingsTableMaker;
import fieldsalt.basis.property.PropertyHandOver;
import fieldsalt.basis.property.Sodium;
import fieldsalt.basis.property.SoilProperty;
import fieldsalt.basis.setting.BasisSettings;
import fieldsalt.basis.site.RootZoneReadings;
import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteHandOver;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.quantity.DepthRange;
import fieldsalt.read.sample.Sample;
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
  public static ConvertedReadings convert(List<Sample> samples, BasisSettings settings) {
    return new ReadingsTableMaker(samples, settings).converted();
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
    return new SiteHandOver(samples, settings).rootZone(rootZone);
  }

  /**
   * Readings of a soil property, averaged by thickness over one layer (the treated layer of a
   * gypsum plan, say); of every date of the newest campaign or all, as the settings say.
   *
   * @param layer from the surface down
   * @return one row per site and laboratory, on the property's scale
   */
  public static SiteReadings property(
      List<Sample> samples, BasisSettings settings, SoilProperty property, DepthRange layer) {
    return new PropertyHandOver(samples, settings).property(property, layer);
  }

  /**
   * Readings of a column of the user's own choice ({@code property:} of the job), taken as exact.
   *
   * @param name of the column, for people
   * @param rootZone over which it is averaged, by field
   */
  public static SiteReadings ownProperty(
      List<Sample> samples,
      BasisSettings settings,
      String name,
      String unit,
      Scale scale,
      Function<String, RootZone> rootZone) {
    return new PropertyHandOver(samples, settings).own(name, unit, scale, rootZone);
  }

  /** What each row says about sodium; rows that say nothing are not in the list. */
  public static List<Sodium> sodium(List<Sample> samples, BasisSettings settings) {
    return new PropertyHandOver(samples, settings).sodium();
  }
}
