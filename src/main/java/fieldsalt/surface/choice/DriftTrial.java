package fieldsalt.surface.choice;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.gaussian.MixedModel;
import fieldsalt.gaussian.NotPositiveDefinite;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.fit.Doubts;
import fieldsalt.surface.fit.Modelled;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.fit.SurfaceDetails;
import fieldsalt.surface.site.Drift;
import fieldsalt.surface.site.DriftGaps;
import fieldsalt.surface.site.Observations;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * Tries what may steer the surface: each drift alone, and two together, in the fields that it can
 * steer ({@link SteeredFields}). A set is fit to be chosen if there are 15 sites for each drift and
 * each coefficient keeps its sign whatever field is left out (of a single field: whatever quarter
 * of it).
 *
 * @param fields that the set can steer
 * @param tried the set that improves most on kriging there
 * @param allowed whether it may be chosen
 * @param doubts sites in doubt once the drift is in
 */
public record DriftTrial(
    Set<String> fields,
    Tried tried,
    Modelled modelled,
    SurfaceDetails.DriftCheck check,
    boolean allowed,
    List<Doubts.Site> doubts) {
  private static final int SITES_PER_DRIFT = 15;

  /**
   * What is set against the drifts.
   *
   * @param readings of all fields
   * @param mapped fields
   * @param plain the models of all fields without drift
   * @param kriging under them
   * @param doubting looks for sites in doubt
   */
  public record Against(
      SiteReadings readings,
      List<FieldBoundary> mapped,
      Modelled plain,
      Tried kriging,
      Function<Modelled, Doubts.Result> doubting) {}

  /** The best set of drifts; empty, with the findings that say why, if none can be tried. */
  public static Optional<DriftTrial> of(
      Against against, List<Drift> drifts, List<Finding> findings) {
    SteeredFields steered = new SteeredFields(against.readings, against.mapped, findings);
    Map<Drift, Set<String>> fields = new LinkedHashMap<>();
    for (Drift drift : drifts) {
      Set<String> own = steered.of(drift);
      if (!own.isEmpty()) {
        fields.put(drift, own);
      }
    }
    DriftTrial best = null;
    double most = 0;
    for (List<Drift> set : sets(List.copyOf(fields.keySet()))) {
      Set<String> common = SteeredFields.common(set.stream().map(fields::get).toList());
      Optional<DriftTrial> trial =
          common.isEmpty() ? Optional.empty() : trial(against, set, common, findings);
      double gain = trial.map(t -> t.gainOver(against.kriging)).orElse(0.0);
      if (trial.isPresent() && (best == null || better(trial.get(), gain, best, most))) {
        best = trial.get();
        most = gain;
      }
    }
    return Optional.ofNullable(best);
  }

  private static boolean better(DriftTrial one, double gain, DriftTrial other, double most) {
    return one.allowed == other.allowed ? gain > most : one.allowed;
  }

  /** Mean, kriging, the drift and inverse distance, judged at the sites of its fields. */
  public List<Tried> candidates(List<Tried> plain) {
    List<Tried> candidates = new ArrayList<>();
    plain.forEach(t -> candidates.add(t.judgedIn(fields)));
    candidates.add(2, tried);
    return candidates;
  }

  /** By how much it lowers the CRPS, summed over the sites of its fields. */
  private double gainOver(Tried kriging) {
    double without = kriging.judgedIn(fields).meanCrps();
    return (without - tried.meanCrps()) * tried.leftOut().size();
  }

  private static List<List<Drift>> sets(List<Drift> drifts) {
    List<List<Drift>> sets = new ArrayList<>();
    drifts.forEach(d -> sets.add(List.of(d)));
    if (drifts.size() == 2) {
      sets.add(drifts);
    }
    return sets;
  }

  private static Optional<DriftTrial> trial(
      Against against, List<Drift> set, Set<String> fields, List<Finding> findings) {
    SiteReadings readings = only(against.readings, s -> fields.contains(s.field()));
    try {
      Observations data = DriftGaps.filled(Observations.of(readings, set));
      if (data.siteCount() < SITES_PER_DRIFT * set.size()) {
        findings.add(tooFew(set, data.siteCount()));
        return Optional.empty();
      }
      Doubts.Result doubts =
          against.doubting.apply(Modelled.of(data.withPrior(ofOthers(against, fields, data))));
      Modelled modelled = doubts.modelled();
      boolean keeps = keepsSigns(readings, set, modelled.fit().model());
      SurfaceDetails.DriftCheck check = check(modelled, keeps);
      return Optional.of(
          new DriftTrial(
              fields, Candidates.withDrift(modelled), modelled, check, keeps, doubts.sites()));
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

  private static Finding tooFew(List<Drift> set, int sites) {
    return new Finding(
        Code.DRIFT_NOT_USED,
        new Place.Source(names(set)),
        sites + " sites in the fields that it covers; a drift needs " + SITES_PER_DRIFT + " each",
        "the map is made from the readings alone");
  }

  /** What the other fields say of the offsets that all share. */
  private static MixedModel.Prior ofOthers(Against against, Set<String> fields, Observations data) {
    SiteReadings rest = only(against.readings, s -> !fields.contains(s.field()));
    return rest.rows().isEmpty()
        ? data.prior()
        : Solved.of(Observations.of(rest, List.of()), against.plain.fit().model()).ofOffsets();
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
    Observations data = DriftGaps.filled(Observations.of(readings, set));
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

  /** The rows of some sites. */
  public static SiteReadings only(SiteReadings readings, Predicate<SiteReadings.Site> wanted) {
    return readings.withRows(
        readings.rows().stream().filter(r -> wanted.test(readings.sites().get(r.site()))).toList());
  }
}
