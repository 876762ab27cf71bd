package fieldsalt.surface;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.finding.Place;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.read.site.SurveyReading;
import fieldsalt.surface.area.FieldMeans;
import fieldsalt.surface.choice.Candidates;
import fieldsalt.surface.choice.Choice;
import fieldsalt.surface.choice.DetailsMaker;
import fieldsalt.surface.choice.DoubtfulSites;
import fieldsalt.surface.choice.DriftTrial;
import fieldsalt.surface.choice.SurfaceSettings;
import fieldsalt.surface.choice.Tried;
import fieldsalt.surface.fit.Doubts;
import fieldsalt.surface.fit.Modelled;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.SurfaceDetails;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.fit.SurfaceReport;
import fieldsalt.surface.kernel.LocalKriging;
import fieldsalt.surface.site.Drift;
import fieldsalt.surface.site.FieldLattice;
import fieldsalt.surface.site.FieldSelection;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.SiteThinning;
import fieldsalt.surface.site.SurveyDrift;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Entry of this stage: SiteReadings to a Surface. */
public final class SurfaceFitter {
  /** Sites of a field that are solved whole at most. */
  private static final int MOST_WHOLE = 1000;

  private static final String NO_VALUE =
      "the mean of the sites is taken there, with a wider error; hatched on the map and marked in"
          + " extrapolated.tif: sample there";

  private static final String UNSEEN =
      "hatched on the map and marked in extrapolated.tif: believe it less; sample there";

  private final SiteReadings all;

  /** All, or fewer where there are too many. */
  private final SiteReadings readings;

  /** Names of the fields that have too many. */
  private final Set<String> thinned;

  private final List<Drift> drifts;
  private final SurfaceSettings settings;
  private final List<Finding> findings = new ArrayList<>();

  private SurfaceFitter(SiteReadings readings, List<Drift> drifts, SurfaceSettings settings) {
    this.all = readings;
    this.readings = SiteThinning.of(readings, MOST_WHOLE);
    this.thinned = thinned(all, this.readings);
    this.drifts = List.copyOf(drifts);
    this.settings = settings;
  }

  /** Fits without a survey: see the longer form. */
  public static Surface fit(
      SiteReadings readings, List<FieldBoundary> boundaries, SurfaceSettings settings) {
    return fit(readings, boundaries, List.of(), List.of(), settings);
  }

  /**
   * Fits, tries the methods against sites that they did not see, and chooses.
   *
   * @param readings with at least one field of 3 sites
   * @param boundaries of all fields of the ranch, metres
   * @param survey apparent conductivity, which may steer the surface; empty if there is none
   * @param rasters of the user, at most two, which may steer it too
   * @return a surface of the fields with at least 3 sites; the others are named in {@link
   *     SurfaceReport#leftOut()} (1 or 2 sites) or in a finding (none)
   * @throws InputProblem if no field has 3 sites, more than two rasters are given, or a drift is
   *     asked for and there is none that can be used
   */
  public static Surface fit(
      SiteReadings readings,
      List<FieldBoundary> boundaries,
      List<SurveyReading> survey,
      List<Drift> rasters,
      SurfaceSettings settings) {
    if (rasters.size() > 2) {
      throw new InputProblem(
          "drift rasters",
          rasters.size() + " rasters",
          "at most two",
          "Name the two that you trust most: among many, chance finds one that fits.");
    }
    List<Drift> drifts = new ArrayList<>();
    if (!survey.isEmpty()) {
      drifts.add(new SurveyDrift(survey));
    }
    drifts.addAll(rasters);
    return new SurfaceFitter(readings, drifts, settings).fit(boundaries);
  }

  private Surface fit(List<FieldBoundary> boundaries) {
    FieldSelection fields = FieldSelection.of(all, boundaries);
    findings.addAll(fields.findings());
    Doubts.Result doubts = doubts(Modelled.of(Observations.of(readings, List.of())), boundaries);
    Modelled modelled = doubts.modelled();
    findings.addAll(modelled.findings());
    Optional<DriftTrial> drift =
        DriftTrial.of(readings, drifts, m -> doubts(m, boundaries), findings);
    List<Tried> tried = Candidates.withoutDrift(modelled);
    drift.ifPresent(d -> tried.add(2, d.tried()));
    Choice choice = choose(tried, drift);
    boolean drifted = choice.chosen().method() == SurfaceMethod.DRIFT;
    if (drifted) {
      tellExtrapolation(fields, choice.chosen().data());
    }
    DetailsMaker details =
        new DetailsMaker(readings, drifted ? drift.orElseThrow().modelled() : modelled, findings);
    SurfaceDetails made =
        details.of(
            choice.chosen(),
            tried.get(0),
            drift.map(DriftTrial::check),
            drifted ? drift.orElseThrow().doubts() : doubts.sites());
    made.doubtful()
        .forEach(d -> findings.add(DoubtfulSites.finding(d, readings.property(), readings.unit())));
    return surface(fields, tried, choice, details.modelled().described(), made);
  }

  /** Factors of 3 and more are what slips and small spots look like: only where ln is mapped. */
  private Doubts.Result doubts(Modelled plain, List<FieldBoundary> boundaries) {
    if (readings.scale() != Scale.LOG) {
      return new Doubts.Result(plain, List.of());
    }
    Map<String, Double> area =
        boundaries.stream()
            .collect(Collectors.toMap(FieldBoundary::name, f -> f.shapeM().getArea(), (a, b) -> a));
    return Doubts.of(
        plain,
        plain.likelihood().data().parts().stream()
            .mapToDouble(p -> area.getOrDefault(p.field(), 0.0))
            .toArray());
  }

  private void tellExtrapolation(FieldSelection fields, Observations data) {
    for (FieldBoundary field : fields.mapped()) {
      List<PlaceM> places = FieldLattice.of(field, 400);
      for (Observations.ScaledDrift drift : data.drifts()) {
        double[] at = places.stream().mapToDouble(drift::at).toArray();
        double unknown = Arrays.stream(at).filter(Double::isNaN).count();
        double unseen =
            Arrays.stream(at).filter(v -> v < drift.least() || v > drift.most()).count();
        tell(field, unknown / at.length, "has no value of " + drift.drift().name(), NO_VALUE);
        tell(
            field,
            unseen / at.length,
            "has values of " + drift.drift().name() + " that no sampled place has",
            UNSEEN);
      }
    }
  }

  private void tell(FieldBoundary field, double share, String what, String done) {
    if (share > 0) {
      String found =
          String.format(Locale.ROOT, "about %.0f %% of it %s", Math.max(1, 100 * share), what);
      findings.add(new Finding(Code.DRIFT_EXTRAPOLATED, Place.field(field.name()), found, done));
    }
  }

  private Surface surface(
      FieldSelection fields,
      List<Tried> tried,
      Choice choice,
      SurfaceReport.FittedVariogram variogram,
      SurfaceDetails details) {
    tellManySites(choice.chosen().method());
    Tried chosen = informed(fromAllSites(choice.chosen()), fields.mapped());
    SurfaceReport report =
        new SurfaceReport(
            choice.chosen().method(),
            choice.why(),
            tried.stream().map(Tried::candidate).toList(),
            variogram,
            findings,
            fields.leftOut(),
            details);
    return new FittedSurface(chosen, readings.scale(), fields.mapped(), settings, report);
  }

  /** Composites of a field of too many sites say nothing that those do not. */
  private Tried informed(Tried chosen, List<FieldBoundary> mapped) {
    List<SiteReadings.FieldMean> used = new ArrayList<>();
    for (SiteReadings.FieldMean composite : all.fieldMeans()) {
      if (thinned.contains(composite.field())) {
        findings.add(
            new Finding(
                Code.COMPOSITE_UNUSED,
                new Place.Site(composite.sample(), composite.field(), true),
                "a composite of a field of more than 1,000 sites",
                "not used for the map: the sites say more than it could"));
      } else {
        used.add(composite);
      }
    }
    return FieldMeans.inform(chosen, used, all.scale(), mapped, findings);
  }

  /** Fields of which not all sites are solved whole. */
  private static Set<String> thinned(SiteReadings all, SiteReadings fewer) {
    Map<String, Long> sites = sites(all);
    Map<String, Long> kept = sites(fewer);
    return sites.keySet().stream()
        .filter(f -> !sites.get(f).equals(kept.get(f)))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** Sites with readings, by field. */
  private static Map<String, Long> sites(SiteReadings readings) {
    return readings.rows().stream()
        .map(SiteReadings.Row::site)
        .distinct()
        .collect(
            Collectors.groupingBy(s -> readings.sites().get(s).field(), Collectors.counting()));
  }

  /** The map of a thinned field is made from all of its sites again. */
  private Tried fromAllSites(Tried chosen) {
    boolean kriged =
        chosen.method() == SurfaceMethod.KRIGING || chosen.method() == SurfaceMethod.DRIFT;
    if (thinned.isEmpty() || !kriged) {
      return chosen;
    }
    Observations rows =
        Observations.of(
            all.withRows(
                all.rows().stream()
                    .filter(r -> thinned.contains(all.sites().get(r.site()).field()))
                    .toList()),
            List.of());
    List<Predictor> local =
        chosen.predictors().stream()
            .<Predictor>map(p -> new LocalKriging(p.solved(), rows))
            .toList();
    return new Tried(chosen.method(), chosen.data(), local, chosen.leftOut());
  }

  private void tellManySites(SurfaceMethod method) {
    Map<String, Long> sites = sites(all);
    boolean kriged = method == SurfaceMethod.KRIGING || method == SurfaceMethod.DRIFT;
    String map =
        kriged
            ? "each place is predicted from its neighbours among all sites"
            : "and so is the map";
    for (String field : thinned) {
      findings.add(
          new Finding(
              Code.MANY_SITES,
              Place.field(field),
              sites.get(field) + " sites",
              "variogram, shared errors and validation rest on "
                  + MOST_WHOLE
                  + " of them (those read by several methods first, then a spread); "
                  + map));
    }
  }

  private Choice choose(List<Tried> tried, Optional<DriftTrial> drift) {
    boolean allowed = drift.map(DriftTrial::allowed).orElse(false);
    if (settings.method() == SurfaceMethod.AUTO) {
      return Choice.among(
          tried.stream()
              .filter(t -> t.method() != SurfaceMethod.IDW)
              .filter(t -> t.method() != SurfaceMethod.DRIFT || allowed)
              .toList());
    }
    return tried.stream()
        .filter(t -> t.method() == settings.method())
        .findFirst()
        .map(Choice::asked)
        .orElseThrow(
            () ->
                new InputProblem(
                    "method",
                    settings.method().label() + " without a survey or raster that can be used",
                    "a survey or a drift raster with a value at every site",
                    "Give one, or take method: auto."));
  }
}
