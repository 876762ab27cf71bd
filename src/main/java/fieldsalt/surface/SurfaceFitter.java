package fieldsalt.surface;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.finding.Place;
import fieldsalt.gaussian.MixedModel;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.read.site.SurveyReading;
import fieldsalt.surface.choice.Candidates;
import fieldsalt.surface.choice.Choice;
import fieldsalt.surface.choice.DetailsMaker;
import fieldsalt.surface.choice.DoubtfulSites;
import fieldsalt.surface.choice.DriftTrial;
import fieldsalt.surface.choice.FieldWarnings;
import fieldsalt.surface.choice.FittedGroup;
import fieldsalt.surface.choice.MethodByField;
import fieldsalt.surface.choice.SurfaceSettings;
import fieldsalt.surface.choice.Tried;
import fieldsalt.surface.fit.Doubts;
import fieldsalt.surface.fit.Modelled;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.fit.SurfaceDetails;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.fit.SurfaceReport;
import fieldsalt.surface.site.Drift;
import fieldsalt.surface.site.FieldLattice;
import fieldsalt.surface.site.FieldSelection;
import fieldsalt.surface.site.Observations;
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
  /** Sites that fields beside steered ones need for a variogram of their own. */
  private static final int SITES_FOR_THEIR_OWN = 10;

  private static final String NO_VALUE =
      "the mean of the sites is taken there, with a wider error; hatched on the map and marked in"
          + " extrapolated.tif: sample there";

  private static final String UNSEEN =
      "hatched on the map and marked in extrapolated.tif: believe it less; sample there";

  private final SiteReadings all;

  /** All, or fewer where there are too many. */
  private final SiteReadings readings;

  private final ManySites many;

  private final List<Drift> drifts;
  private final SurfaceSettings settings;
  private final List<Finding> findings = new ArrayList<>();

  private SurfaceFitter(SiteReadings readings, List<Drift> drifts, SurfaceSettings settings) {
    this.all = readings;
    this.many = new ManySites(readings, findings);
    this.readings = many.fewer();
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
    Doubts.Result plain = doubts(Modelled.of(Observations.of(readings, List.of())), boundaries);
    findings.addAll(plain.modelled().findings());
    List<Tried> tried = Candidates.withoutDrift(plain.modelled());
    FieldWarnings warnings = new FieldWarnings(tried.get(0).data(), readings);
    fields.mapped().forEach(f -> findings.addAll(warnings.of(f)));
    Optional<DriftTrial> trial =
        DriftTrial.of(
            new DriftTrial.Against(
                readings,
                fields.mapped(),
                plain.modelled(),
                tried.get(1),
                m -> doubts(m, boundaries)),
            drifts,
            findings);
    Optional<FittedGroup> steered =
        trial.flatMap(t -> FittedGroup.steered(t, tried, settings.method()));
    List<FittedGroup> groups = new ArrayList<>();
    Set<String> others =
        fields.mapped().stream()
            .map(FieldBoundary::name)
            .filter(f -> steered.isEmpty() || !steered.get().fields().contains(f))
            .collect(Collectors.toCollection(TreeSet::new));
    if (steered.isEmpty()) {
      groups.add(whole(others, plain, tried, trial));
    } else if (!others.isEmpty()) {
      groups.add(beside(steered.get(), others, plain, tried, boundaries));
    }
    steered.ifPresent(
        s -> {
          tellExtrapolation(fields, s);
          groups.add(s);
        });
    return surface(fields, groups, tried, plain.modelled(), trial.map(DriftTrial::check));
  }

  /** One method for all fields, none of which is steered. */
  private FittedGroup whole(
      Set<String> fields, Doubts.Result plain, List<Tried> tried, Optional<DriftTrial> trial) {
    List<Tried> candidates =
        trial.filter(t -> t.fields().equals(fields)).map(t -> t.candidates(tried)).orElse(tried);
    return new FittedGroup(fields, choose(tried), candidates, plain.modelled(), plain.sites());
  }

  /**
   * Fields beside steered ones have covariance parameters of their own, if they have sites enough,
   * and what the steered ones say of the offsets.
   */
  private FittedGroup beside(
      FittedGroup steered,
      Set<String> fields,
      Doubts.Result plain,
      List<Tried> tried,
      List<FieldBoundary> boundaries) {
    Observations own =
        Observations.of(
            DriftTrial.only(readings, s -> !steered.fields().contains(s.field())), List.of());
    List<Tried> candidates = new ArrayList<>(tried.stream().map(t -> t.judgedIn(fields)).toList());
    if (own.siteCount() < SITES_FOR_THEIR_OWN) {
      List<Doubts.Site> doubts =
          plain.sites().stream()
              .filter(d -> fields.contains(tried.get(0).data().parts().get(d.part()).field()))
              .toList();
      return new FittedGroup(fields, choose(candidates), candidates, plain.modelled(), doubts);
    }
    Observations data = steered.modelled().likelihood().data();
    MixedModel.Prior offsets =
        Solved.of(
                data.withPrior(MixedModel.Prior.standard(data.offsets())),
                steered.modelled().fit().model())
            .ofOffsets();
    Doubts.Result models = doubts(Modelled.of(own.withPrior(offsets)), boundaries);
    findings.addAll(models.modelled().findings());
    candidates.set(1, Candidates.krigingApart(models.modelled()));
    return new FittedGroup(
        fields, choose(candidates), candidates, models.modelled(), models.sites());
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
            .toArray(),
        settings.believed());
  }

  private void tellExtrapolation(FieldSelection fields, FittedGroup steered) {
    Observations data = steered.choice().chosen().data();
    for (FieldBoundary field : fields.mapped()) {
      if (!steered.fields().contains(field.name())) {
        continue;
      }
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
      List<FittedGroup> groups,
      List<Tried> tried,
      Modelled plain,
      Optional<SurfaceDetails.DriftCheck> drift) {
    DetailsMaker details = new DetailsMaker(readings, groups, tried.get(0), findings);
    SurfaceDetails made = details.of(plain, drift);
    made.doubtful()
        .forEach(d -> findings.add(DoubtfulSites.finding(d, readings.property(), readings.unit())));
    FittedGroup first = groups.get(0);
    List<MethodByField.Group> methods = new ArrayList<>();
    for (FittedGroup group : groups) {
      methods.add(
          new MethodByField.Group(
              group.fields(), many.whole(group, methods.isEmpty(), fields.mapped())));
    }
    SurfaceReport report =
        new SurfaceReport(
            first.choice().chosen().method(),
            first.choice().why(),
            first.candidates().stream().map(Tried::candidate).toList(),
            first.modelled().described(),
            findings,
            fields.leftOut(),
            made,
            details.accuracy(),
            details.accuracyWithoutDoubtful(),
            details.steering(tried.get(1)));
    return new FittedSurface(
        new MethodByField(methods), readings.scale(), fields.mapped(), settings, report);
  }

  private Choice choose(List<Tried> tried) {
    if (settings.method() == SurfaceMethod.AUTO) {
      return Choice.among(tried.stream().filter(t -> t.method() != SurfaceMethod.IDW).toList());
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
                    "a survey or a drift raster with values where samples were taken",
                    "Give one, or take method: auto."));
  }
}
