package fieldsalt.pipeline;

import fieldsalt.handover.input.ZoneFeature;
import fieldsalt.handover.output.ZonesOutput;
import fieldsalt.plan.soil.ZoneGround;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.zones.field.Zone;
import fieldsalt.zones.sodicity.Sodicity;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Figures of zones and sites under the names that the files give them. */
final class Features {
  private static final double Z90 = 1.6448536269514722;

  private final Prepared prepared;
  private final Mapped mapped;
  private final Planned planned;

  Features(Prepared prepared, Mapped mapped, Planned planned) {
    this.prepared = prepared;
    this.mapped = mapped;
    this.planned = planned;
  }

  List<ZoneFeature> zones() {
    List<ZoneFeature> features = new ArrayList<>();
    List<Zone> zones = mapped.zones().zones();
    for (int z = 0; z < zones.size(); z++) {
      Zone zone = zones.get(z);
      ZonesOutput.Known known =
          new ZonesOutput.Known(
              prepared.isEce(),
              planned.means().low()[z],
              planned.means().mean()[z],
              planned.means().high()[z],
              mapped.zones().figuresByZone().get(zone.name()).chanceAbove(),
              mapped.sodicity().isPresent(),
              Optional.ofNullable(sodicity().get(zone.name())),
              chanceSodic(zone),
              plan(zone));
      features.add(ZonesOutput.feature(zone, mapped.schemes().get(zone.field()), known));
    }
    return features;
  }

  double chanceSodic(Zone zone) {
    return mapped.zones().figuresByZone().get(zone.name()).secondChance().orElse(Double.NaN);
  }

  private Map<String, Sodicity.OfZone> sodicityByZone;

  /** Sodicity by zone; empty unless zones are divided by it. */
  Map<String, Sodicity.OfZone> sodicity() {
    if (sodicityByZone == null) {
      sodicityByZone =
          mapped
              .sodicity()
              .map(
                  s ->
                      s.zones(
                          mapped.zones().zones(),
                          planned.grounds().stream().map(ZoneGround::points).toList(),
                          mapped.schemes()))
              .orElse(Map.of());
    }
    return sodicityByZone;
  }

  Optional<ZonePlan> plan(Zone zone) {
    return planned
        .plan()
        .flatMap(ranch -> ranch.zones().stream().filter(p -> p.zone().equals(zone)).findFirst());
  }
}
