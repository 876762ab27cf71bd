package fieldsalt.pipeline;

import fieldsalt.basis.site.ReadingErrors;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.report.input.PageZoning;
import fieldsalt.zones.field.ZoneMap;
import fieldsalt.zones.field.ZonesAtSites;
import fieldsalt.zones.sodicity.Sodicity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** How good the zones of each field are, against the map and against the readings. */
final class Zoning {
  private final Prepared prepared;
  private final Mapped mapped;

  Zoning(Prepared prepared, Mapped mapped) {
    this.prepared = prepared;
    this.mapped = mapped;
  }

  List<PageZoning> fields() {
    ZoneMap zones = mapped.zones();
    ReadingErrors errors = ReadingErrors.of(prepared.readings());
    List<PageZoning> fields = new ArrayList<>();
    for (FieldBoundary field : prepared.ranch().fields()) {
      String name = field.name();
      if (mapped.schemes().containsKey(name)) {
        fields.add(
            new PageZoning(
                name,
                field.shapeM().getArea() / 10_000,
                zones.changedHaByField().get(name),
                zones.uncertainHaByField().get(name),
                zones.varianceExplainedByField().get(name),
                ZonesAtSites.of(name, zones.zonesOf(name), prepared.readings(), errors),
                mapped.sodicity().flatMap(s -> sodicity(s, name))));
      }
    }
    return fields;
  }

  private Optional<PageZoning.BySodicity> sodicity(Sodicity sodicity, String field) {
    return Optional.ofNullable(sodicity.byField().get(field))
        .map(
            m ->
                new PageZoning.BySodicity(
                    m.property().label(),
                    m.property().unit(),
                    m.limit(),
                    prepared.job().amount("gypsum.depth-cm"),
                    m.readings().sitesIn(field),
                    m.surface().report().chosen()));
  }
}
