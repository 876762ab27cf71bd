package fieldsalt.zones.sodicity;

import fieldsalt.basis.property.SoilProperty;
import fieldsalt.basis.site.Scale;
import fieldsalt.classes.ClassScheme;
import fieldsalt.facts.UsSalinityLaboratory1954;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.SampledProperty;
import fieldsalt.surface.Surface;
import fieldsalt.surface.area.AreaMeans;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.site.Target;
import fieldsalt.zones.field.SecondCriterion;
import fieldsalt.zones.field.Zone;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Sodicity of the layer that gypsum would treat, by which zones are divided beside salinity. In
 * each field it is read from ESP or from SAR of the saturation extract, whichever was measured at
 * more sites (ESP of equal numbers).
 *
 * @param espLimitPct ESP from which soil counts as sodic; SAR from the one that corresponds
 * @param byField what divides each field; a field with fewer than 3 sites of either is absent
 */
public record Sodicity(
    double espLimitPct,
    Optional<SampledProperty> esp,
    Optional<SampledProperty> sar,
    Map<String, Measured> byField,
    List<Finding> findings) {
  private static final List<String> LABELS = List.of("not sodic", "sodic");

  /** Told by field, as sodicity that is not known. */
  private static final Set<Code> FIELDS_TOLD =
      Set.of(Code.FIELD_WITHOUT_SITES, Code.FIELD_LEFT_OUT);

  /**
   * One field's sodicity: what it was read from.
   *
   * @param classes the limit and the labels, without values
   */
  public record Measured(
      SoilProperty property, SampledProperty readings, double limit, SecondCriterion classes) {
    /** The surface it is read from. */
    public Surface surface() {
      return readings.surface().orElseThrow();
    }
  }

  /**
   * Sodicity of one zone.
   *
   * @param label of its class
   * @param low 5 % quantile of its mean
   * @param high 95 % quantile of its mean
   */
  public record OfZone(
      Measured by, boolean isSodic, String label, double low, double mean, double high) {}

  /**
   * The sodicity of every mapped field.
   *
   * @param espLimitPct from which soil counts as sodic
   * @param esp with cells of the size of the maps' own
   * @param sar likewise
   * @param fields that are mapped
   */
  public static Sodicity of(
      double espLimitPct,
      Optional<SampledProperty> esp,
      Optional<SampledProperty> sar,
      List<FieldBoundary> fields) {
    Sodicity sodicity =
        new Sodicity(espLimitPct, esp, sar, new LinkedHashMap<>(), new ArrayList<>());
    sodicity.divide(fields);
    sodicity.tellOfSurfaces();
    return sodicity;
  }

  /** What is to be known of the surfaces that divide zones, under codes of their own. */
  private void tellOfSurfaces() {
    for (SoilProperty property : List.of(SoilProperty.ESP, SoilProperty.SAR)) {
      byField.values().stream()
          .filter(m -> m.property() == property)
          .findFirst()
          .ifPresent(
              m ->
                  m.surface().report().findings().stream()
                      .filter(f -> !FIELDS_TOLD.contains(f.code()))
                      .map(f -> ofSodicity(property, f))
                      .forEach(findings::add));
    }
  }

  private static Finding ofSodicity(SoilProperty property, Finding f) {
    return new Finding(
        Code.SODICITY_SURFACE,
        new Place.OfProperty(property.label(), f.place()),
        f.found(),
        f.done());
  }

  private void divide(List<FieldBoundary> fields) {
    for (FieldBoundary field : fields) {
      property(field.name())
          .ifPresentOrElse(
              p -> byField.put(field.name(), measured(p)),
              () -> findings.add(unknown(field.name())));
    }
  }

  /** ESP or SAR, whichever is mapped in the field and known at more of its sites. */
  private Optional<SoilProperty> property(String field) {
    int ofEsp = sites(esp, field);
    int ofSar = sites(sar, field);
    return ofEsp == 0 && ofSar == 0
        ? Optional.empty()
        : Optional.of(ofEsp >= ofSar ? SoilProperty.ESP : SoilProperty.SAR);
  }

  /** Sites of a field at which a property is known; 0 where they are too few for a map. */
  private static int sites(Optional<SampledProperty> property, String field) {
    return property
        .filter(p -> p.surface().map(s -> s.mappedFields().contains(field)).orElse(false))
        .map(p -> p.sitesIn(field))
        .orElse(0);
  }

  private Finding unknown(String field) {
    int most =
        Stream.of(esp, sar)
            .flatMap(Optional::stream)
            .mapToInt(p -> p.sitesIn(field))
            .max()
            .orElse(0);
    return new Finding(
        Code.SODICITY_UNKNOWN,
        Place.field(field),
        (most == 0 ? "no site" : most == 1 ? "1 site" : most + " sites")
            + " with ESP or SAR of the saturated paste in the layer to treat, 3 are needed",
        "its zones follow salinity only; measure sodium at more of its sites");
  }

  private double limit(SoilProperty property) {
    boolean bySar = property == SoilProperty.SAR;
    return bySar ? UsSalinityLaboratory1954.sodicSar(espLimitPct) : espLimitPct;
  }

  private Measured measured(SoilProperty property) {
    SampledProperty readings = (property == SoilProperty.ESP ? esp : sar).orElseThrow();
    double limit = limit(property);
    double onScale = property.scale() == Scale.LOG ? Math.log(limit) : limit;
    return new Measured(
        property,
        readings,
        limit,
        new SecondCriterion("sodicity", new float[0], new float[0], List.of(onScale), LABELS));
  }

  /** What divides a field besides salinity, on the grid of its map; empty where it is not known. */
  public Optional<SecondCriterion> criterion(String field) {
    return Optional.ofNullable(byField.get(field)).map(m -> criterion(field, m));
  }

  private static SecondCriterion criterion(String field, Measured measured) {
    SurfaceMap own = measured.surface().map(field, measured.limit(), done -> {});
    float[] values = own.median().clone();
    if (measured.property().scale() == Scale.LOG) {
      for (int i = 0; i < values.length; i++) {
        values[i] = (float) Math.log(values[i]);
      }
    }
    return new SecondCriterion(
        "sodicity", values, own.chance(), measured.classes().breaks(), LABELS);
  }

  /** Whether no field's sodium says where it is, only how much. */
  public boolean isFlat() {
    return byField.values().stream().allMatch(m -> m.surface().report().isFlat());
  }

  /**
   * Each zone's sodicity, by the zone's name; zones of fields where it is not known are absent.
   *
   * @param points that stand for each zone
   * @param schemes by field
   */
  public Map<String, OfZone> zones(
      List<Zone> zones, List<List<Target>> points, Map<String, ClassScheme> schemes) {
    Map<String, OfZone> known = new LinkedHashMap<>();
    Map<String, List<Integer>> mine =
        IntStream.range(0, zones.size())
            .filter(z -> byField.containsKey(zones.get(z).field()))
            .boxed()
            .collect(
                Collectors.groupingBy(
                    z -> zones.get(z).field(), LinkedHashMap::new, Collectors.toList()));
    mine.forEach(
        (field, own) -> {
          List<List<Target>> areas = own.stream().map(points::get).toList();
          AreaMeans means = byField.get(field).surface().areaMeans(areas).means();
          for (int k = 0; k < own.size(); k++) {
            Zone zone = zones.get(own.get(k));
            known.put(zone.name(), ofZone(zone, schemes.get(field), means, k));
          }
        });
    return known;
  }

  private OfZone ofZone(Zone zone, ClassScheme scheme, AreaMeans means, int index) {
    Measured by = byField.get(zone.field());
    int sodic = by.classes().classOf(zone, scheme);
    return new OfZone(
        by,
        sodic == 1,
        LABELS.get(sodic),
        means.low()[index],
        means.mean()[index],
        means.high()[index]);
  }
}
