package fieldsalt.surface.choice;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.gaussian.NotPositiveDefinite;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.fit.Doubts;
import fieldsalt.surface.fit.Modelled;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.fit.SurfaceDetails;
import fieldsalt.surface.site.Drift;
import fieldsalt.surface.site.Observations;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Tries what may steer the surface: each drift alone, and two together. A set is fit to be chosen
 * if there are 15 sites for each drift, every site has a value, and each coefficient keeps its sign
 * whatever field is left out (of a single field: whatever quarter of it).
 *
 * @param tried the set with the lowest leave-one-out CRPS
 * @param allowed whether it may be chosen
 * @param doubts sites in doubt once the drift is in
 */
public record DriftTrial(
    Tried tried,
    Modelled modelled,
    SurfaceDetails.DriftCheck check,
    boolean allowed,
    List<Doubts.Site> doubts) {
  private static final int SITES_PER_DRIFT = 15;

  /**
   * The best set of drifts; empty, with the findings that say why, if none can be tried.
   *
   * @param doubting looks for sites in doubt
   */
  public static Optional<DriftTrial> of(
      SiteReadings readings,
      List<Drift> drifts,
      Function<Modelled, Doubts.Result> doubting,
      List<Finding> findings) {
    List<Drift> usable = new ArrayList<>();
    for (Drift drift : drifts) {
      reasonAgainst(readings, drift)
          .ifPresentOrElse(
              reason ->
                  findings.add(
                      new Finding(
                          Code.DRIFT_NOT_USED, new Place.Source(drift.name()), reason, IGNORED)),
              () -> usable.add(drift));
    }
    DriftTrial best = null;
    for (List<Drift> set : sets(usable)) {
      Optional<DriftTrial> trial = trial(readings, set, doubting, findings);
      if (trial.isPresent() && (best == null || better(trial.get(), best))) {
        best = trial.get();
      }
    }
    return Optional.ofNullable(best);
  }

  private static final String IGNORED =
      "ignored: only what has a value at every sampled place, and not the same at all, can steer the"
          + " map; fill the gaps, or leave the samples in them out";

  private static boolean better(DriftTrial one, DriftTrial other) {
    if (one.allowed != other.allowed) {
      return one.allowed;
    }
    return one.tried.meanCrps() < other.tried.meanCrps();
  }

  private static List<List<Drift>> sets(List<Drift> drifts) {
    List<List<Drift>> sets = new ArrayList<>();
    drifts.forEach(d -> sets.add(List.of(d)));
    if (drifts.size() == 2) {
      sets.add(drifts);
    }
    return sets;
  }

  private static Optional<String> reasonAgainst(SiteReadings readings, Drift drift) {
    double[] at = atSites(readings, drift);
    long missing = java.util.Arrays.stream(at).filter(Double::isNaN).count();
    if (missing > 0) {
      return Optional.of("it has no value at " + missing + " of " + at.length + " sites");
    }
    double low = java.util.Arrays.stream(at).min().orElse(0);
    double high = java.util.Arrays.stream(at).max().orElse(0);
    return high - low > 1e-9 * (1 + Math.abs(high))
        ? Optional.empty()
        : Optional.of("it has one and the same value at every site");
  }

  private static double[] atSites(SiteReadings readings, Drift drift) {
    return readings.rows().stream()
        .map(SiteReadings.Row::site)
        .distinct()
        .sorted()
        .mapToDouble(s -> drift.at(readings.sites().get(s).place()))
        .toArray();
  }

  private static Optional<DriftTrial> trial(
      SiteReadings readings,
      List<Drift> set,
      Function<Modelled, Doubts.Result> doubting,
      List<Finding> findings) {
    Observations data = Observations.of(readings, set);
    if (data.siteCount() < SITES_PER_DRIFT * set.size()) {
      findings.add(
          new Finding(
              Code.DRIFT_NOT_USED,
              new Place.Source(names(set)),
              data.siteCount() + " sites; a drift needs " + SITES_PER_DRIFT + " each",
              "the map is made from the readings alone"));
      return Optional.empty();
    }
    try {
      Doubts.Result doubts = doubting.apply(Modelled.of(data));
      Modelled modelled = doubts.modelled();
      boolean keeps = keepsSigns(readings, set, modelled.fit().model());
      SurfaceDetails.DriftCheck check = check(modelled, keeps);
      return Optional.of(
          new DriftTrial(Candidates.withDrift(modelled), modelled, check, keeps, doubts.sites()));
    } catch (NotPositiveDefinite collinear) {
      findings.add(
          new Finding(
              Code.DRIFT_NOT_USED,
              new Place.Source(names(set)),
              "it only differs from field to field, or repeats another drift",
              "ignored: the field means carry it already"));
      return Optional.empty();
    }
  }

  private static String names(List<Drift> set) {
    return String.join(" and ", set.stream().map(Drift::name).toList());
  }

  private static SurfaceDetails.DriftCheck check(Modelled modelled, boolean keeps) {
    Observations data = modelled.likelihood().data();
    Solved solved = modelled.likelihood().solve(modelled.fit().model());
    double[] effects = solved.solution().sharedEffects();
    double[][] covariance = solved.solution().sharedCovariance();
    int count = data.drifts().size();
    double[] coefficients = new double[count];
    double[] errors = new double[count];
    for (int d = 0; d < count; d++) {
      coefficients[d] = effects[d] / data.drifts().get(d).spread();
      errors[d] = Math.sqrt(covariance[d][d]) / data.drifts().get(d).spread();
    }
    List<Drift> set = data.drifts().stream().map(Observations.ScaledDrift::drift).toList();
    String verdict =
        keeps
            ? "The effect of " + names(set) + " keeps its sign whatever field is left out."
            : "The effect of "
                + names(set)
                + " changes its sign when a field is left out: it does not steer the map.";
    return new SurfaceDetails.DriftCheck(
        set.stream().map(Drift::name).toList(), coefficients, errors, keeps, verdict);
  }

  private static boolean keepsSigns(SiteReadings readings, List<Drift> set, CovarianceModel model) {
    double[] all = slopes(readings, set, model);
    for (SiteReadings rest : leavingOut(readings)) {
      double[] some = slopes(rest, set, model);
      for (int d = 0; d < all.length; d++) {
        if (all[d] * some[d] <= 0) {
          return false;
        }
      }
    }
    return true;
  }

  private static double[] slopes(SiteReadings readings, List<Drift> set, CovarianceModel model) {
    Observations data = Observations.of(readings, set);
    double[] effects = Solved.of(data, model).solution().sharedEffects();
    return java.util.Arrays.copyOf(effects, set.size());
  }

  /** The readings without each field; without each quarter of it if there is but one. */
  private static List<SiteReadings> leavingOut(SiteReadings readings) {
    List<SiteReadings.Site> used =
        readings.rows().stream().map(r -> readings.sites().get(r.site())).distinct().toList();
    List<String> fields = used.stream().map(SiteReadings.Site::field).distinct().sorted().toList();
    List<SiteReadings> parts = new ArrayList<>();
    if (fields.size() > 1) {
      fields.forEach(f -> parts.add(only(readings, s -> !s.field().equals(f))));
      return parts;
    }
    double x = Tried.median(used.stream().mapToDouble(s -> s.place().xM()).sorted().toArray());
    double y = Tried.median(used.stream().mapToDouble(s -> s.place().yM()).sorted().toArray());
    for (int quarter = 0; quarter < 4; quarter++) {
      boolean east = quarter % 2 == 0;
      boolean north = quarter < 2;
      parts.add(only(readings, s -> s.place().xM() > x != east || s.place().yM() > y != north));
    }
    return parts;
  }

  private static SiteReadings only(
      SiteReadings readings, java.util.function.Predicate<SiteReadings.Site> wanted) {
    return readings.withRows(
        readings.rows().stream().filter(r -> wanted.test(readings.sites().get(r.site()))).toList());
  }
}
