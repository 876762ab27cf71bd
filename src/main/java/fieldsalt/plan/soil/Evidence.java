package fieldsalt.plan.soil;

import fieldsalt.basis.Basis;
import fieldsalt.basis.depth.FieldDepth;
import fieldsalt.basis.depth.ProfileShape;
import fieldsalt.basis.depth.RootZone;
import fieldsalt.basis.depth.Uptake;
import fieldsalt.basis.property.Sodium;
import fieldsalt.basis.site.RootZoneReadings;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** How firmly the map of each field stands, for the plan. */
public final class Evidence {
  private static final double SEEDBED_CM = 15;

  /** Findings that make a plan rest on sand; gypsum itself is asked of the soil. */
  private static final Set<Code> UNDERMINING =
      Set.of(Code.GYPSUM_SUSPECTED, Code.DEFAULT_VARIOGRAM, Code.CALCULATED_ECE);

  private final Map<String, FieldDepth> depths;
  private final Map<String, Long> sites;
  private final Predicate<String> noBetterThanMean;
  private final List<Finding> findings;
  private final Map<String, List<Sodium>> sodium;
  private final Map<String, Double> seedbedLogEce;

  /**
   * @param rootZone readings that were mapped
   * @param noBetterThanMean whether nothing predicts unseen sites of a field better than its mean
   * @param findings of the stages before this one
   */
  public Evidence(
      Basis basis,
      RootZoneReadings rootZone,
      Predicate<String> noBetterThanMean,
      List<Finding> findings) {
    this.depths =
        rootZone.fields().stream()
            .collect(Collectors.toMap(FieldDepth::field, Function.identity(), (a, b) -> a));
    this.sites =
        rootZone.readings().sites().stream()
            .collect(Collectors.groupingBy(SiteReadings.Site::field, Collectors.counting()));
    this.noBetterThanMean = noBetterThanMean;
    this.findings = findings;
    this.sodium = basis.sodium().stream().collect(Collectors.groupingBy(s -> s.sample().field()));
    SiteReadings seedbed =
        basis.rootZone(field -> new RootZone(SEEDBED_CM, Uptake.UNIFORM)).readings();
    this.seedbedLogEce =
        seedbed.rows().stream()
            .collect(
                Collectors.groupingBy(
                    row -> seedbed.sites().get(row.site()).field(),
                    Collectors.averagingDouble(SiteReadings.Row::value)));
  }

  /** What stands behind the map of a field. */
  public FieldEvidence of(String field) {
    Optional<FieldDepth> depth = Optional.ofNullable(depths.get(field));
    return new FieldEvidence(
        sites.getOrDefault(field, 0L).intValue(),
        noBetterThanMean.test(field),
        depth.map(FieldDepth::topsoilOnly).orElse(false),
        depth.map(FieldDepth::shape).orElse(ProfileShape.UNKNOWN),
        seedbedEce(field),
        sodiumUncorrected(field),
        undermining(field));
  }

  /** Geometric mean of the sites' ECe of the top 15 cm, where at least one was sampled. */
  private OptionalDouble seedbedEce(String field) {
    Double logEce = seedbedLogEce.get(field);
    return logEce == null ? OptionalDouble.empty() : OptionalDouble.of(Math.exp(logEce));
  }

  /** Whether fewer than half of the field's rows on sodium can be used as they are. */
  private boolean sodiumUncorrected(String field) {
    List<Sodium> own = sodium.getOrDefault(field, List.of());
    long usable = own.stream().filter(s -> s.findings().isEmpty()).count();
    return 2 * usable < own.size();
  }

  /** The first of each kind that is about this field's rows, their laboratory or the ranch. */
  private List<Finding> undermining(String field) {
    Map<Code, Finding> first = new LinkedHashMap<>();
    findings.stream()
        .filter(f -> UNDERMINING.contains(f.code()) && f.place().concerns(field))
        .forEach(f -> first.putIfAbsent(f.code(), f));
    return List.copyOf(first.values());
  }
}
