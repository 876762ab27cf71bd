package fieldsalt.report.result;

import fieldsalt.basis.depth.FieldDepth;
import fieldsalt.basis.pair.ConvertedReadings;
import fieldsalt.basis.site.RootZoneReadings;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.classes.ClassScheme;
import fieldsalt.classes.FieldCrops;
import fieldsalt.finding.Finding;
import fieldsalt.plan.RanchPlan;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.read.Ranch;
import fieldsalt.surface.area.AreaMeans;
import fieldsalt.surface.fit.SurfaceReport;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.next.Proposals;
import fieldsalt.zones.field.Zone;
import fieldsalt.zones.field.ZoneMap;
import fieldsalt.zones.sodicity.Sodicity;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Results of the stages.
 *
 * @param readings what was read, and on which basis
 * @param mapped the surface and its zones
 * @param planned what is known of each zone and what is to be done
 * @param findings of every stage, in the order in which they were made
 */
public record RunResults(
    Readings readings, Mapped mapped, Planned planned, List<Finding> findings) {
  public RunResults {
    findings = List.copyOf(findings);
  }

  /**
   * Stages 1 and 2.
   *
   * @param converted empty where another property than ECe is mapped
   */
  public record Readings(
      Ranch ranch,
      FieldCrops crops,
      RootZoneReadings rootZone,
      Optional<ConvertedReadings> converted) {
    /** What was mapped. */
    public SiteReadings sites() {
      return rootZone.readings();
    }

    /** What depth each field's readings stand for. */
    public List<FieldDepth> depths() {
      return rootZone.fields();
    }
  }

  /**
   * Stages 3 to 5.
   *
   * @param schemes by field, in the fields' order; a field left out is absent
   */
  public record Mapped(
      SurfaceReport report,
      List<SurfaceMap> maps,
      Map<String, ClassScheme> schemes,
      ZoneMap zones,
      Optional<Sodicity> sodicity) {}

  /**
   * Stage 6.
   *
   * @param means of the zones, in their order
   * @param sodicity by zone; zones of fields where sodium is not known are absent
   * @param plan empty where another property than ECe is mapped
   */
  public record Planned(
      AreaMeans means,
      Map<String, Sodicity.OfZone> sodicity,
      Optional<RanchPlan> plan,
      Proposals next) {
    /** Plans by the name of their zone. */
    public Map<String, ZonePlan> byZone() {
      Map<String, ZonePlan> plans = new LinkedHashMap<>();
      plan.ifPresent(ranch -> ranch.zones().forEach(p -> plans.put(p.zone().name(), p)));
      return plans;
    }
  }

  /** Mean chance over a zone's points to be sodic; NaN where that is not known. */
  public double chanceSodic(Zone zone) {
    return mapped.zones().figuresByZone().get(zone.name()).secondChance().orElse(Double.NaN);
  }
}
