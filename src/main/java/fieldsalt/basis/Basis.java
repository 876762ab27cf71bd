package fieldsalt.basis;

import fieldsalt.basis.depth.RootZone;
import fieldsalt.basis.layer.LayerReadings;
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

/**
 * Entry of the stage: laboratory readings as ECe with its errors. Each row is converted once, when
 * this is made; every question is answered from the same converted rows.
 */
public final class Basis {
  private final BasisSettings settings;
  private final LayerReadings layers;
  private final PropertyHandOver properties;

  private Basis(List<Sample> samples, BasisSettings settings) {
    this.settings = settings;
    this.layers = LayerReadings.of(samples, settings);
    this.properties = new PropertyHandOver(layers, settings);
  }

  /**
   * Converts every usable row.
   *
   * @param samples rows as read, with or without places
   */
  public static Basis of(List<Sample> samples, BasisSettings settings) {
    return new Basis(samples, settings);
  }

  /**
   * Every usable reading as ECe with its 90 % interval, and the factors before and after pairs;
   * with all that was found about rows, pairs and groups.
   */
  public ConvertedReadings converted() {
    return new ReadingsTableMaker(layers, settings).converted();
  }

  /**
   * Readings for the surface: layers averaged over each field's root zone, with what depth each
   * field's readings stand for. Rows without a place (composites) inform their field's mean.
   *
   * @param rootZone of a field, by its name
   * @return one row per site and method; values are ln ECe (dS/m) with published factors
   */
  public RootZoneReadings rootZone(Function<String, RootZone> rootZone) {
    return new SiteHandOver(layers, settings).rootZone(rootZone);
  }

  /**
   * Readings of a soil property, averaged by thickness over one layer (the treated layer of a
   * gypsum plan, say); of every date of the newest campaign or all, as the settings say.
   *
   * @param layer of each field, from the surface down
   * @return one row per site and laboratory, on the property's scale
   */
  public SiteReadings property(SoilProperty property, Function<String, DepthRange> layer) {
    return properties.property(property, layer);
  }

  /**
   * Readings of a column of the user's own choice ({@code property:} of the job), taken as exact.
   *
   * @param name of the column, for people
   * @param rootZone over which it is averaged, by field
   */
  public SiteReadings ownProperty(
      String name, String unit, Scale scale, Function<String, RootZone> rootZone) {
    return properties.own(name, unit, scale, rootZone);
  }

  /** What each row says about sodium; rows that say nothing are not in the list. */
  public List<Sodium> sodium() {
    return properties.sodium();
  }
}
