package fieldsalt.zones;

import fieldsalt.classes.ClassScheme;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.zones.field.CellFigures;
import fieldsalt.zones.field.FieldMap;
import fieldsalt.zones.field.FieldZoner;
import fieldsalt.zones.field.OptimalGroups;
import fieldsalt.zones.field.SecondCriterion;
import fieldsalt.zones.field.Zone;
import fieldsalt.zones.field.ZoneFigures;
import fieldsalt.zones.field.ZoneMap;
import fieldsalt.zones.field.ZoneSettings;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;

/**
 * Draws zones: connected pieces of one class that tile each field exactly. Guarantees for every
 * field with a valid boundary: the zones are a valid coverage (no gap, no overlap, shared edges
 * vertex by vertex), their areas sum to the field's to 1e-6, none is smaller than the least area
 * nor, but for corners, narrower than the least width, unless the field is; their lines follow the
 * class lines of the surface to a fraction of a cell, except where a piece was joined to another.
 */
public final class ZoneBuilder {
  /** Merging is told if it changes the class of more than this share of a field (judgement). */
  static final double CHANGED_SHARE = 0.05;

  private final List<Zone> zones = new ArrayList<>();
  private final Map<String, Double> changed = new LinkedHashMap<>();
  private final Map<String, Double> explained = new LinkedHashMap<>();
  private final Map<String, Double> uncertain = new LinkedHashMap<>();
  private final List<Finding> findings = new ArrayList<>();
  private final Map<String, ZoneFigures> figures = new LinkedHashMap<>();
  private final Map<String, ClassScheme> used = new LinkedHashMap<>();

  private ZoneBuilder() {}

  /**
   * Zones of one field.
   *
   * @param map that holds the field
   * @param scheme classes; with {@link ZoneSettings.By#COUNT} limits are made here, and only the
   *     scheme's limit for the chance is taken over
   * @param second its values on the grid of the map; without it the surface alone divides the field
   */
  public static ZoneMap build(
      SurfaceMap map,
      FieldBoundary field,
      ClassScheme scheme,
      ZoneSettings settings,
      Optional<SecondCriterion> second) {
    ZoneBuilder builder = new ZoneBuilder();
    FieldMap own = new FieldMap(map, map.fields().indexOf(field.name()));
    builder.add(field, own, scheme, settings, second);
    return builder.result();
  }

  /**
   * Zones that the user gave: each has the class of its mean.
   *
   * @param map that holds the field
   * @param shapes by name, parts of the field
   * @param means of the surface over the shapes, in their order, in the property's own unit
   * @param second as for {@link #build}
   */
  public static ZoneMap given(
      SurfaceMap map,
      FieldBoundary field,
      ClassScheme scheme,
      Map<String, Geometry> shapes,
      double[] means,
      Optional<SecondCriterion> second) {
    ZoneBuilder builder = new ZoneBuilder();
    FieldMap own = new FieldMap(map, map.fields().indexOf(field.name()));
    List<Zone> zones = new ArrayList<>();
    for (Map.Entry<String, Geometry> shape : shapes.entrySet()) {
      int klass = scheme.classOf(means[zones.size()]);
      String label = scheme.labels().get(klass);
      zones.add(new Zone(shape.getKey(), field.name(), klass, label, shape.getValue()));
    }
    List<Zone> labelled = second.map(s -> bySecond(own, scheme, zones, s)).orElse(zones);
    builder.changed.put(field.name(), 0.0);
    builder.describe(field, own, scheme, labelled, second);
    return builder.result();
  }

  /** Classes of the second criterion from the middle of its values in each zone. */
  private static List<Zone> bySecond(
      FieldMap map, ClassScheme scheme, List<Zone> zones, SecondCriterion second) {
    double[] means =
        new CellFigures(map, scheme, zones, Optional.of(second)).means(second.values());
    List<Zone> labelled = new ArrayList<>();
    for (Zone zone : zones) {
      double mean = means[labelled.size()];
      int klass = 0;
      while (klass < second.breaks().size() && mean >= second.breaks().get(klass)) {
        klass++;
      }
      String label = second.label(zone.label(), klass);
      labelled.add(new Zone(zone.name(), zone.field(), zone.klass(), label, zone.shapeM()));
    }
    return labelled;
  }

  private void add(
      FieldBoundary field,
      FieldMap map,
      ClassScheme given,
      ZoneSettings settings,
      Optional<SecondCriterion> second) {
    ClassScheme scheme =
        settings.by() == ZoneSettings.By.COUNT ? OptimalGroups.scheme(map, given, settings) : given;
    FieldZoner zoner = new FieldZoner(field, map, scheme, second, settings);
    List<Zone> mine = zoner.zones();
    double fieldHa = field.shapeM().getArea() / 10_000;
    tellChanged(field.name(), zoner.changedHa(), fieldHa, settings);
    describe(field, map, scheme, mine, second);
    findings.addAll(zoner.findings());
  }

  private void describe(
      FieldBoundary field,
      FieldMap map,
      ClassScheme scheme,
      List<Zone> mine,
      Optional<SecondCriterion> second) {
    CellFigures cells = new CellFigures(map, scheme, mine, second);
    double fieldHa = field.shapeM().getArea() / 10_000;
    zones.addAll(mine);
    explained.put(field.name(), cells.varianceExplained());
    uncertain.put(field.name(), cells.uncertainHa(fieldHa));
    figures.putAll(cells.byZone());
    used.put(field.name(), scheme);
  }

  private void tellChanged(String field, double changedHa, double fieldHa, ZoneSettings settings) {
    changed.put(field, changedHa);
    if (changedHa > CHANGED_SHARE * fieldHa) {
      findings.add(
          new Finding(
              Code.ZONES_MERGED,
              Place.field(field),
              String.format(
                  Locale.ROOT,
                  "pieces smaller than %s ha or narrower than %s m make up %.1f ha, %.0f %% of it",
                  plain(settings.minAreaHa()),
                  plain(settings.minWidthM()),
                  changedHa,
                  100 * changedHa / fieldHa),
              "each joined the neighbour closest in value and has its class; for finer zones lower"
                  + " zones.min-area-ha or zones.min-width-m"));
    }
  }

  private static String plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  private ZoneMap result() {
    return new ZoneMap(zones, changed, explained, uncertain, findings, figures, used);
  }
}
