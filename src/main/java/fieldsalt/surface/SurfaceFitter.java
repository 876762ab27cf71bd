package fieldsalt.surface;

import fieldsalt.basis.SiteReadings;
import fieldsalt.finding.Finding;
import fieldsalt.finding.InputProblem;
import fieldsalt.read.FieldBoundary;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;

/** Entry of this stage: SiteReadings to a Surface. */
public final class SurfaceFitter {
  private static final int FEWEST_SITES = 3;
  private static final int SITES_FOR_A_FIT = 10;
  private static final int SITES_WITHOUT_AVERAGING = 100;
  private static final double DEFAULT_RANGE_M = 200;
  private static final double DEFAULT_SHARE = 0.3;
  private static final double LEAST_SILL = 0.1;

  private final SiteReadings readings;
  private final SurfaceSettings settings;
  private final List<Finding> findings = new ArrayList<>();

  private SurfaceFitter(SiteReadings readings, SurfaceSettings settings) {
    this.readings = readings;
    this.settings = settings;
  }

  /**
   * Fits, tries the methods against sites that they did not see, and chooses.
   *
   * @param readings with at least one field of 3 sites
   * @param boundaries of all fields of the ranch, metres
   * @return a surface of the fields with at least 3 sites; the others are named in {@link
   *     SurfaceReport#leftOut()} (fewer than 3) or in a finding (none)
   * @throws InputProblem if no field has 3 sites
   */
  public static Surface fit(
      SiteReadings readings, List<FieldBoundary> boundaries, SurfaceSettings settings) {
    return new SurfaceFitter(readings, settings).fit(boundaries);
  }

  private Surface fit(List<FieldBoundary> boundaries) {
    List<String> leftOut = new ArrayList<>();
    List<FieldBoundary> mapped = mapped(boundaries, leftOut);
    Observations data = Observations.of(readings, List.of());
    Likelihood likelihood = new Likelihood(data);
    Modelled modelled = modelled(likelihood);
    Solved uncorrelated = uncorrelated(likelihood, modelled.reml());
    List<Tried> tried = tried(data, modelled.nodes(), uncorrelated);
    Choice choice = choose(tried);
    SurfaceReport report =
        new SurfaceReport(
            choice.chosen().method().label(),
            choice.why(),
            tried.stream().map(Tried::candidate).toList(),
            modelled.fitted(),
            findings,
            leftOut);
    return new FittedSurface(choice.chosen(), readings.scale(), mapped, settings, report);
  }

  private List<FieldBoundary> mapped(List<FieldBoundary> boundaries, List<String> leftOut) {
    TreeMap<String, Integer> sites = new TreeMap<>();
    readings.rows().stream()
        .map(SiteReadings.Row::site)
        .distinct()
        .forEach(s -> sites.merge(readings.sites().get(s).field(), 1, Integer::sum));
    List<FieldBoundary> mapped = new ArrayList<>();
    List<InputProblem.Problem> problems = new ArrayList<>();
    boundaries.stream()
        .sorted(Comparator.comparing(FieldBoundary::name))
        .forEach(
            field -> {
              int n = sites.getOrDefault(field.name(), 0);
              if (n >= FEWEST_SITES) {
                mapped.add(field);
              } else {
                leave(field.name(), n, leftOut, problems);
              }
            });
    if (mapped.isEmpty()) {
      throw new InputProblem(problems);
    }
    return mapped;
  }

  private void leave(
      String field, int sites, List<String> leftOut, List<InputProblem.Problem> problems) {
    String found = sites == 0 ? "no site" : sites == 1 ? "1 site" : sites + " sites";
    problems.add(
        new InputProblem.Problem(
            "field " + field,
            found + " with a usable reading",
            "at least " + FEWEST_SITES,
            "Sample at least 3 places in this field, better 10 or more."));
    if (sites == 0) {
      findings.add(
          new Finding("field-without-sites", "field " + field, found, "not mapped; sample it"));
    } else {
      leftOut.add(field);
      findings.add(
          new Finding(
              "field-left-out",
              "field " + field,
              found + ", a map needs 3",
              "left out of the map and of every table; sample at least 3 places in it"));
    }
  }

  /** The covariance models to predict with, and what to say of them. */
  private record Modelled(List<Solved> nodes, SurfaceReport.FittedVariogram fitted, Reml reml) {}

  private Modelled modelled(Likelihood likelihood) {
    Reml reml = new Reml(likelihood);
    int sites = likelihood.data().siteCount();
    if (sites < SITES_FOR_A_FIT) {
      return byDefault(likelihood, reml, sites);
    }
    Reml.Fit fit = new VariogramChoice(likelihood, reml).best();
    boolean averaged = sites < SITES_WITHOUT_AVERAGING;
    List<Solved> nodes =
        averaged
            ? Averaging.over(likelihood, fit.model().correlation(), reml)
            : List.of(likelihood.solve(fit.model()));
    return new Modelled(nodes, described(fit, averaged, false), reml);
  }

  private Modelled byDefault(Likelihood likelihood, Reml reml, int sites) {
    double sill = Math.max(likelihood.data().pooledVariance(), LEAST_SILL);
    CovarianceModel model =
        new CovarianceModel(
            new Exponential(DEFAULT_RANGE_M), sill * (1 - DEFAULT_SHARE), sill * DEFAULT_SHARE);
    findings.add(
        new Finding(
            "default-variogram",
            "ranch",
            sites + " sites; fewer than " + SITES_FOR_A_FIT + " cannot show how salt varies",
            "an assumed variogram is used (exponential, 200 m): treat this map as a guess and"
                + " sample more places"));
    Reml.Fit fit = new Reml.Fit(model, likelihood.of(model));
    return new Modelled(List.of(likelihood.solve(model)), described(fit, false, true), reml);
  }

  private static SurfaceReport.FittedVariogram described(
      Reml.Fit fit, boolean averaged, boolean isDefault) {
    double range = fit.model().correlation().rangeM();
    return new SurfaceReport.FittedVariogram(
        fit.model().correlation().name(),
        fit.model().partialSill(),
        range,
        range,
        range,
        fit.model().microScale(),
        fit.logLikelihood(),
        averaged,
        isDefault);
  }

  /** All variance of z at its most likely value, none of it correlated. */
  private static Solved uncorrelated(Likelihood likelihood, Reml reml) {
    CovarianceModel shape = new CovarianceModel(new Exponential(1), 0, 1);
    double sill = likelihood.bestSill(shape, reml.sillLow(), reml.sillHigh());
    return likelihood.solve(Likelihood.scaled(shape, sill));
  }

  private List<Tried> tried(Observations data, List<Solved> nodes, Solved uncorrelated) {
    LeaveOneOut leave = new LeaveOneOut(data, nodes);
    MeanRule mean = new MeanRule(uncorrelated);
    IdwRule idw = new IdwRule(data);
    return List.of(
        new Tried(SurfaceMethod.MEAN, data, linear(nodes, mean), leave.mean(uncorrelated)),
        new Tried(SurfaceMethod.KRIGING, data, kriging(nodes), leave.kriging()),
        new Tried(SurfaceMethod.IDW, data, linear(nodes, idw), leave.idw()));
  }

  private static List<Predictor> linear(List<Solved> nodes, LinearRule rule) {
    return nodes.stream().<Predictor>map(n -> new Linear(n, rule)).toList();
  }

  private static List<Predictor> kriging(List<Solved> nodes) {
    return nodes.stream().<Predictor>map(Kriging::new).toList();
  }

  private Choice choose(List<Tried> tried) {
    if (settings.method() == SurfaceMethod.AUTO) {
      return Choice.among(tried.stream().filter(t -> t.method() != SurfaceMethod.IDW).toList());
    }
    return Choice.asked(
        tried.stream().filter(t -> t.method() == settings.method()).findFirst().orElseThrow());
  }
}
