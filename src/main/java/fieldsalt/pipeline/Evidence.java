package fieldsalt.pipeline;

import fieldsalt.basis.Basis;
import fieldsalt.basis.depth.FieldDepth;
import fieldsalt.basis.depth.ProfileShape;
import fieldsalt.basis.depth.RootZone;
import fieldsalt.basis.depth.Uptake;
import fieldsalt.basis.property.Sodium;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Finding;
import fieldsalt.plan.soil.FieldEvidence;
import fieldsalt.plan.soil.FieldSoil;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.read.sample.Sample;
import fieldsalt.surface.Surface;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** How firmly the map of each field stands, for the plan. */
final class Evidence {
  private static final double SEEDBED_CM = 15;

  /** Findings that make a plan rest on sand; gypsum itself is asked of the soil. */
  private static final Set<String> UNDERMINING =
      Set.of("gypsum-suspected", "default-variogram", "calculated-ece");

  private final Prepared prepared;
  private final Surface surface;
  private final List<Finding> findings;
  private final List<Sodium> sodium;
  private final SiteReadings seedbed;

  Evidence(Prepared prepared, Surface surface, List<Finding> findings) {
    this.prepared = prepared;
    this.surface = surface;
    this.findings = findings;
    this.sodium = Basis.sodium(prepared.ranch().samples(), prepared.basis());
    this.seedbed =
        Basis.siteReadings(
            prepared.ranch().samples(),
            prepared.basis(),
            field -> new RootZone(SEEDBED_CM, Uptake.UNIFORM));
  }

  /** Whether gypsum is confirmed in a field's root zone. */
  static boolean gypsiferous(Prepared prepared, String field) {
    Optional<FieldBoundary> boundary =
        prepared.ranch().fields().stream().filter(f -> f.name().equals(field)).findFirst();
    double depthCm = prepared.crops().rootZone(field).depthCm();
    return boundary
        .map(b -> FieldSoil.of(b, prepared.ranch().samples(), depthCm).isGypsiferous())
        .orElse(false);
  }

  FieldEvidence of(String field) {
    Optional<FieldDepth> depth =
        prepared.rootZone().fields().stream().filter(d -> d.field().equals(field)).findFirst();
    int sites =
        (int) prepared.readings().sites().stream().filter(s -> s.field().equals(field)).count();
    return new FieldEvidence(
        sites,
        surface.report().chosen().equals("mean"),
        depth.map(FieldDepth::topsoilOnly).orElse(false),
        depth.map(FieldDepth::shape).orElse(ProfileShape.UNKNOWN),
        seedbedEce(field),
        sodiumUncorrected(field),
        undermining(field));
  }

  /** Geometric mean of the sites' ECe of the top 15 cm, where at least one was sampled. */
  private OptionalDouble seedbedEce(String field) {
    OptionalDouble mean =
        seedbed.rows().stream()
            .filter(row -> seedbed.sites().get(row.site()).field().equals(field))
            .mapToDouble(SiteReadings.Row::value)
            .average();
    return mean.isPresent() ? OptionalDouble.of(Math.exp(mean.getAsDouble())) : mean;
  }

  /** Whether fewer than half of the field's rows on sodium can be used as they are. */
  private boolean sodiumUncorrected(String field) {
    List<Sodium> own = sodium.stream().filter(s -> s.sample().field().equals(field)).toList();
    long usable = own.stream().filter(s -> s.findings().isEmpty()).count();
    return 2 * usable < own.size();
  }

  /** The first of each kind that is about this field's rows, their laboratory or the ranch. */
  private List<Finding> undermining(String field) {
    Set<String> about = about(prepared.ranch().samples(), field);
    Map<String, Finding> first = new LinkedHashMap<>();
    findings.stream()
        .filter(f -> UNDERMINING.contains(f.code()) && about.contains(f.where()))
        .forEach(f -> first.putIfAbsent(f.code(), f));
    return List.copyOf(first.values());
  }

  /** What a finding names as its place if it is about a field. */
  static Set<String> about(List<Sample> samples, String field) {
    Set<String> about = new HashSet<>(List.of("ranch", "field " + field));
    for (Sample sample : samples) {
      if (sample.field().equals(field)) {
        String file = sample.source().file();
        about.add(sample.source() + ", site " + sample.id());
        about.add(file);
        about.add(file + ", laboratory " + sample.laboratory());
      }
    }
    return about;
  }

  List<Finding> sodiumFindings() {
    return sodium.stream().flatMap(s -> s.findings().stream()).distinct().toList();
  }
}
