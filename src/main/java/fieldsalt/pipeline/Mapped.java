package fieldsalt.pipeline;

import fieldsalt.basis.property.SoilProperty;
import fieldsalt.classes.ClassScheme;
import fieldsalt.classes.FieldCrops;
import fieldsalt.classes.FieldSchemes;
import fieldsalt.finding.Code;
import fieldsalt.finding.FieldFault;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.plan.soil.FieldSoil;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.Sample;
import fieldsalt.surface.Surface;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.map.SurfaceStrips;
import fieldsalt.zones.ZoneBuilder;
import fieldsalt.zones.field.SecondCriterion;
import fieldsalt.zones.field.ZoneMap;
import fieldsalt.zones.field.ZoneSettings;
import fieldsalt.zones.given.GivenZones;
import fieldsalt.zones.sodicity.Sodicity;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BiConsumer;
import org.locationtech.jts.geom.Geometry;

/**
 * A ranch mapped: stages 3 to 5.
 *
 * @param maps as they are held
 * @param rasters the maps as they are written, worked out then if they are too large to be held
 * @param schemes classes by field, as the zones use them
 * @param soil surfaces of what the plan needs besides salinity
 * @param sodicity by which the zones are divided too, if the job asks for it
 */
record Mapped(
    Surface surface,
    List<SurfaceMap> maps,
    List<SurfaceStrips> rasters,
    Map<String, ClassScheme> schemes,
    ZoneMap zones,
    SoilSurfaces soil,
    Optional<Sodicity> sodicity,
    List<Finding> findings) {

  /**
   * @param without fields that are left out
   * @throws fieldsalt.finding.FieldFault if a field makes trouble that no user can mend
   */
  static Mapped of(
      Prepared prepared,
      Surface surface,
      Set<String> without,
      BiConsumer<String, Double> progress) {
    List<Finding> findings = new ArrayList<>(surface.report().findings());
    FieldSchemes made = schemes(prepared);
    Map<String, ClassScheme> schemes = made.byField();
    findings.addAll(made.findings());
    Map<String, Double> limits = new LinkedHashMap<>();
    schemes.forEach((field, scheme) -> limits.put(field, scheme.limitDsPerM()));
    int heldStep = surface.heldStep();
    List<FieldBoundary> fields = mappedFields(prepared, surface, without);
    SoilSurfaces soil =
        new SoilSurfaces(
            prepared, StageSettings.surface(prepared.job()).withCellM(surface.cellM()));
    Optional<Sodicity> sodicity = sodicity(prepared, soil, fields);
    sodicity.ifPresent(s -> findings.addAll(s.findings()));
    if (!prepared.isEce() && prepared.job().flag("zones.sodicity")) {
      findings.add(ignored(prepared));
    }
    progress.accept("mapping and drawing zones", 0.0);
    AtomicInteger done = new AtomicInteger();
    Map<String, Map<String, Geometry>> given = given(prepared, fields, findings);
    List<MappedField> mapped =
        fields.parallelStream()
            .map(
                field -> {
                  ClassScheme scheme = schemes.get(field.name());
                  MappedField one =
                      FieldFault.naming(
                          field.name(),
                          () ->
                              MappedField.of(
                                  field,
                                  surface,
                                  scheme,
                                  zoneSettings(
                                      prepared.jobs().of(field.name()),
                                      surface,
                                      sodicity,
                                      field.name()),
                                  sodicity,
                                  heldStep,
                                  given.getOrDefault(field.name(), Map.of())));
                  progress.accept(
                      "mapping and drawing zones", done.incrementAndGet() / (double) fields.size());
                  return one;
                })
            .toList();
    ZoneMap zones = ZoneMap.joined(mapped.stream().map(MappedField::zones).toList());
    findings.addAll(zones.findings());
    List<SurfaceMap> maps = mapped.stream().map(MappedField::held).toList();
    List<SurfaceStrips> rasters =
        surface.rasters(maps, limits, share -> progress.accept("writing files", share));
    return new Mapped(
        surface, maps, rasters, usedSchemes(schemes, zones), zones, soil, sodicity, findings);
  }

  /** One field's map and zones. */
  private record MappedField(SurfaceMap held, ZoneMap zones) {
    static MappedField of(
        FieldBoundary field,
        Surface surface,
        ClassScheme scheme,
        ZoneSettings settings,
        Optional<Sodicity> sodicity,
        int heldStep,
        Map<String, Geometry> given) {
      SurfaceMap map = surface.map(field.name(), scheme.limitDsPerM(), share -> {});
      int own = (int) Math.round(map.grid().cellM() / surface.cellM());
      int thinning = (heldStep + own - 1) / own;
      Optional<SecondCriterion> second = sodicity.flatMap(s -> s.criterion(field.name()));
      ZoneMap zones =
          given.isEmpty()
              ? ZoneBuilder.build(map, field, scheme, settings, second)
              : ZoneBuilder.given(
                  map,
                  field,
                  scheme,
                  given,
                  Planned.meansOf(surface, field.name(), given.values()),
                  second);
      return new MappedField(map.thinned(thinning), zones);
    }
  }

  /** Zones that the user gives, in the fields that are to be divided by them. */
  private static Map<String, Map<String, Geometry>> given(
      Prepared prepared, List<FieldBoundary> fields, List<Finding> findings) {
    List<FieldBoundary> asked =
        fields.stream()
            .filter(f -> prepared.jobs().of(f.name()).word("zones.by").equals("file"))
            .toList();
    if (asked.isEmpty()) {
      return Map.of();
    }
    GivenZones given = new GivenZones(prepared.ranch().zones());
    Map<String, Map<String, Geometry>> zones = given.in(asked);
    findings.addAll(given.findings());
    for (FieldBoundary field : asked) {
      if (!zones.containsKey(field.name())) {
        findings.add(
            new Finding(
                Code.GROUND_WITHOUT_ZONE,
                Place.field(field.name()),
                "no zone of the file lies in it",
                "the whole field is one zone; draw its zones, or divide it in another way"));
      }
    }
    return zones;
  }

  private static List<FieldBoundary> mappedFields(
      Prepared prepared, Surface surface, Set<String> without) {
    Set<String> names = new HashSet<>(surface.mappedFields());
    names.removeAll(without);
    return prepared.ranch().fields().stream().filter(f -> names.contains(f.name())).toList();
  }

  private static Optional<Sodicity> sodicity(
      Prepared prepared, SoilSurfaces soil, List<FieldBoundary> fields) {
    return prepared.isEce() && prepared.job().flag("zones.sodicity")
        ? Optional.of(
            Sodicity.of(
                prepared.job().amount("zones.sodic-esp"),
                soil.of(SoilProperty.ESP),
                soil.of(SoilProperty.SAR),
                fields))
        : Optional.empty();
  }

  private static Finding ignored(Prepared prepared) {
    return new Finding(
        Code.SODICITY_IGNORED,
        new Place.Key("zones.sodicity"),
        "a map of " + prepared.readings().property(),
        "only zones of ECe are divided by sodicity too");
  }

  /**
   * Zones follow the field mean where nothing beats it, unless the user insists on a method; those
   * of sodicity are drawn over it where sodium says where it is.
   */
  private static ZoneSettings zoneSettings(
      JobDocument job, Surface surface, Optional<Sodicity> sodicity, String field) {
    boolean flat =
        surface.report().methodOf(field) == SurfaceMethod.MEAN
            || job.word("zones.by").equals("file");
    boolean bySodium = sodicity.map(s -> !s.isFlat()).orElse(false);
    ZoneSettings settings = StageSettings.zones(job, flat && !bySodium);
    return flat && bySodium && settings.by() == ZoneSettings.By.COUNT
        ? settings.withBy(ZoneSettings.By.YIELD)
        : settings;
  }

  private static FieldSchemes schemes(Prepared prepared) {
    Map<String, List<Sample>> samples = prepared.samplesByField();
    FieldCrops crops = prepared.crops();
    return FieldSchemes.of(
        field -> {
          JobDocument job = prepared.jobs().of(field);
          return new FieldSchemes.Settings(
              FieldSchemes.By.of(job.word("zones.by")),
              job.numbers("zones.breaks"),
              prepared.isEce());
        },
        prepared.ranch().fields(),
        crops,
        prepared.readings(),
        field ->
            FieldSoil.of(
                    field,
                    samples.getOrDefault(field.name(), List.of()),
                    crops.rootZone(field.name()).depthCm())
                .isGypsiferous());
  }

  private static Map<String, ClassScheme> usedSchemes(
      Map<String, ClassScheme> made, ZoneMap zones) {
    Map<String, ClassScheme> used = new LinkedHashMap<>();
    for (String field : made.keySet()) {
      Optional.ofNullable(zones.schemeByField().get(field)).ifPresent(s -> used.put(field, s));
    }
    return used;
  }
}
