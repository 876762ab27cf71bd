package fieldsalt.pipeline;

import fieldsalt.basis.depth.RootZone;
import fieldsalt.basis.property.SoilProperty;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.plan.Planner;
import fieldsalt.plan.RanchPlan;
import fieldsalt.plan.SoilAsks;
import fieldsalt.plan.leaching.ReclaimedDepth;
import fieldsalt.plan.soil.Evidence;
import fieldsalt.plan.soil.FieldGround;
import fieldsalt.plan.soil.FieldSoil;
import fieldsalt.plan.soil.PlanInput;
import fieldsalt.plan.soil.SoilProperties;
import fieldsalt.plan.soil.ZoneGround;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.read.sample.Sample;
import fieldsalt.surface.SampledProperty;
import fieldsalt.surface.Surface;
import fieldsalt.surface.area.AreaMeans;
import fieldsalt.surface.area.JointMeans;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.next.Proposals;
import fieldsalt.surface.site.Target;
import fieldsalt.zones.field.Zone;
import fieldsalt.zones.field.ZonePoints;
import fieldsalt.zones.sodicity.Sodicity;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Geometry;

/**
 * Zones with their means and their plan: stage 6.
 *
 * @param grounds each zone with the points that stand for it, in the order of the zones
 * @param means of ECe, one a zone
 * @param next what to measure next, best first
 * @param plan empty where another property than ECe is mapped
 */
record Planned(
    List<ZoneGround> grounds,
    AreaMeans means,
    Optional<RanchPlan> plan,
    Proposals next,
    List<Finding> findings) {
  private static final int NEXT = 10;

  /** Points that stand for a zone: many where a field has few zones, fewer where it has many. */
  private static final int MOST_POINTS = 300;

  private static final int LEAST_POINTS = 60;
  private static final int POINTS_OF_FIELD = 800;

  static Planned of(Prepared prepared, Mapped mapped, BiConsumer<String, Double> progress) {
    progress.accept("averaging over zones", 0.0);
    Map<String, List<ZoneGround>> byField = grounds(mapped.zones().zones());
    Map<String, JointMeans> joint = means(mapped.surface(), byField);
    List<ZoneGround> grounds = byField.values().stream().flatMap(List::stream).toList();
    AreaMeans means = AreaMeans.joined(joint.values().stream().map(JointMeans::means).toList());
    progress.accept("looking for what to measure next", 0.0);
    Proposals next =
        mapped
            .surface()
            .measureNext(
                grounds.stream().map(ZoneGround::points).toList(),
                grounds.stream().map(g -> g.zone().areaHa()).toList(),
                NEXT);
    if (!prepared.isEce()) {
      List<Finding> alike = new ArrayList<>();
      tellAlike(next, alike);
      return new Planned(grounds, means, Optional.empty(), next, alike);
    }
    List<Finding> findings = new ArrayList<>();
    RanchPlan plan = plan(prepared, mapped, byField, joint, findings, progress);
    findings.addAll(plan.findings());
    Proposals all = next.with(SoilAsks.of(plan, prepared.samplesByField()), NEXT);
    tellAlike(all, findings);
    return new Planned(grounds, means, Optional.of(plan), all, findings);
  }

  private static void tellAlike(Proposals next, List<Finding> findings) {
    if (next.alike()) {
      findings.add(
          new Finding(
              Code.NEXT_ALIKE,
              new Place.Ranch(),
              "the "
                  + next.best().size()
                  + " places to sample next are worth about the same: no single place stands out",
              "listed as they came out; spread new sites evenly over the fields instead"));
    }
  }

  private static Map<String, JointMeans> means(
      Surface surface, Map<String, List<ZoneGround>> byField) {
    List<JointMeans> means =
        byField.values().parallelStream()
            .map(zones -> surface.areaMeans(zones.stream().map(ZoneGround::points).toList()))
            .toList();
    Map<String, JointMeans> of = new LinkedHashMap<>();
    int f = 0;
    for (String field : byField.keySet()) {
      of.put(field, means.get(f++));
    }
    return of;
  }

  /** Sodicity by zone; empty unless zones are divided by it. */
  Map<String, Sodicity.OfZone> sodicity(Mapped mapped) {
    return mapped
        .sodicity()
        .map(
            s ->
                s.zones(
                    mapped.zones().zones(),
                    grounds.stream().map(ZoneGround::points).toList(),
                    mapped.schemes()))
        .orElse(Map.of());
  }

  /** The zones of a field stand together. */
  private static Map<String, List<ZoneGround>> grounds(List<Zone> zones) {
    Map<String, List<Zone>> byField =
        zones.stream()
            .collect(Collectors.groupingBy(Zone::field, LinkedHashMap::new, Collectors.toList()));
    Map<String, List<ZoneGround>> grounds = new LinkedHashMap<>();
    byField.forEach(
        (field, own) -> {
          int points = pointsOfZone(own.size());
          grounds.put(field, own.parallelStream().map(zone -> ground(zone, points)).toList());
        });
    return grounds;
  }

  /** Points that stand for a zone of a field of so many. */
  private static int pointsOfZone(int zones) {
    return Math.max(LEAST_POINTS, Math.min(MOST_POINTS, POINTS_OF_FIELD / zones));
  }

  private static ZoneGround ground(Zone zone, int points) {
    return new ZoneGround(zone, targets(zone.field(), zone.shapeM(), points));
  }

  private static List<Target> targets(String field, Geometry shape, int points) {
    return ZonePoints.spread(shape, points).stream()
        .map(place -> new Target(field, place))
        .toList();
  }

  /** Means over the shapes of a field, by the points that stand for them in the plan too. */
  static double[] meansOf(Surface surface, String field, Collection<Geometry> shapes) {
    int points = pointsOfZone(shapes.size());
    return surface
        .areaMeans(shapes.stream().map(shape -> targets(field, shape, points)).toList())
        .mean();
  }

  private static RanchPlan plan(
      Prepared prepared,
      Mapped mapped,
      Map<String, List<ZoneGround>> grounds,
      Map<String, JointMeans> means,
      List<Finding> findings,
      BiConsumer<String, Double> progress) {
    List<Finding> sofar = new ArrayList<>(prepared.findings());
    sofar.addAll(mapped.findings());
    Map<String, List<Sample>> samples = prepared.samplesByField();
    Evidence evidence =
        new Evidence(
            prepared.basis(),
            prepared.rootZone(),
            field -> mapped.surface().report().methodOf(field) == SurfaceMethod.MEAN,
            sofar);
    prepared.basis().sodium().forEach(s -> findings.addAll(s.findings()));
    List<FieldGround> fields = new ArrayList<>();
    for (FieldBoundary field : prepared.ranch().fields()) {
      fields.add(
          new FieldGround(
              field.name(),
              prepared.crops().of(field.name()),
              FieldSoil.of(
                  field,
                  samples.getOrDefault(field.name(), List.of()),
                  prepared.treatedCm(field.name())),
              evidence.of(field.name()),
              prepared.planOf(field.name())));
    }
    progress.accept("mapping what the plan needs", 0.0);
    SoilProperties properties = properties(mapped.soil());
    properties(properties)
        .flatMap(property -> property.readings().findings().stream())
        .filter(f -> !sofar.contains(f) && !findings.contains(f))
        .distinct()
        .toList()
        .forEach(findings::add);
    PlanInput input =
        new PlanInput(
            grounds,
            fields,
            mapped.surface(),
            means::get,
            toReclaim(prepared, mapped.surface()),
            properties,
            samples,
            (long) prepared.job().amount("seed"));
    progress.accept("planning", 0.0);
    return Planner.plan(input, prepared.plan());
  }

  private static Stream<SampledProperty> properties(SoilProperties all) {
    return Stream.of(all.esp(), all.sar(), all.cec(), all.bulkDensity()).flatMap(Optional::stream);
  }

  /**
   * ECe over the depth to reclaim, steered by what may steer the map and with the same readings
   * confirmed; empty where that is what the root zone's readings say.
   */
  private static Optional<Surface> toReclaim(Prepared prepared, Surface mapped) {
    boolean same =
        prepared.ranch().fields().stream()
            .map(FieldBoundary::name)
            .allMatch(f -> reclaimed(prepared, f).equals(prepared.crops().rootZone(f)));
    if (same) {
      return Optional.empty();
    }
    SiteReadings readings =
        prepared.basis().rootZone(field -> reclaimed(prepared, field)).readings();
    if (readings.hasTheValuesOf(prepared.readings())) {
      return Optional.empty();
    }
    Set<String> without =
        prepared.ranch().fields().stream()
            .map(FieldBoundary::name)
            .filter(f -> !mapped.mappedFields().contains(f))
            .collect(Collectors.toSet());
    return Optional.of(
        MapRun.steered(
            prepared,
            readings,
            without,
            StageSettings.surface(prepared.jobs(), prepared.ranch()).withCellM(mapped.cellM())));
  }

  private static RootZone reclaimed(Prepared prepared, String field) {
    return ReclaimedDepth.of(
        prepared.jobs().of(field).number("leaching.depth-cm"), prepared.crops().rootZone(field));
  }

  private static SoilProperties properties(SoilSurfaces soil) {
    return new SoilProperties(
        soil.of(SoilProperty.ESP),
        soil.of(SoilProperty.SAR),
        soil.of(SoilProperty.CEC),
        soil.of(SoilProperty.BULK_DENSITY));
  }
}
