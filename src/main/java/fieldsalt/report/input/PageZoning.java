package fieldsalt.report.input;

import fieldsalt.basis.site.ReadingErrors;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.report.result.RunResults;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.zones.field.ZoneMap;
import fieldsalt.zones.field.ZonesAtSites;
import fieldsalt.zones.sodicity.Sodicity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * How good the zones of one field are.
 *
 * @param changedHa area whose class was changed because a piece was too small or too thin
 * @param uncertainHa area where the chance to be above the nearest limit is between 0.2 and 0.8
 * @param explainedOnMap share of the variance of the map's values that lies between zones
 * @param atSites the same against the readings
 * @param sodicity what else the zones are divided by, if anything
 */
public record PageZoning(
    String field,
    double areaHa,
    double changedHa,
    double uncertainHa,
    double explainedOnMap,
    ZonesAtSites atSites,
    Optional<BySodicity> sodicity) {

  /** Of every mapped field, in the fields' order. */
  static List<PageZoning> of(RunResults results, ToDoubleFunction<String> treatedCm) {
    ZoneMap zones = results.mapped().zones();
    SiteReadings readings = results.readings().sites();
    ReadingErrors errors = ReadingErrors.of(readings);
    List<PageZoning> fields = new ArrayList<>();
    for (FieldBoundary field : results.readings().ranch().fields()) {
      String name = field.name();
      if (results.mapped().schemes().containsKey(name)) {
        fields.add(
            new PageZoning(
                name,
                field.shapeM().getArea() / 10_000,
                zones.changedHaByField().get(name),
                zones.uncertainHaByField().get(name),
                zones.varianceExplainedByField().get(name),
                ZonesAtSites.of(name, zones.zonesOf(name), readings, errors),
                results
                    .mapped()
                    .sodicity()
                    .flatMap(s -> bySodicity(s, name, treatedCm.applyAsDouble(name)))));
      }
    }
    return fields;
  }

  private static Optional<BySodicity> bySodicity(
      Sodicity sodicity, String field, double treatedCm) {
    return Optional.ofNullable(sodicity.byField().get(field))
        .map(
            m ->
                new BySodicity(
                    m.property().label(),
                    m.property().unit(),
                    m.limit(),
                    treatedCm,
                    m.readings().sitesIn(field),
                    m.surface().report().chosen()));
  }

  /**
   * Sodicity as the second criterion.
   *
   * @param property {@code ESP} or {@code SAR}
   * @param limit from which it counts as sodic
   * @param depthCm of the layer, from the surface
   * @param sites of the field at which it is known
   * @param method of its surface: {@code mean}, {@code kriging}, {@code idw}
   */
  public record BySodicity(
      String property,
      String unit,
      double limit,
      double depthCm,
      int sites,
      SurfaceMethod method) {}
}
