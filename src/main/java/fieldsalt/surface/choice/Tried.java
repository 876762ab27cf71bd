package fieldsalt.surface.choice;

import fieldsalt.surface.fit.LeftOut;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.fit.SurfaceReport;
import fieldsalt.surface.site.Observations;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/**
 * A method that was tried, with its predictors (one a covariance model averaged over) and what
 * leave-one-out says of it.
 */
public record Tried(
    SurfaceMethod method, Observations data, List<Predictor> predictors, List<LeftOut> leftOut) {

  /** The predictor of the heaviest weight. */
  public Predictor likeliest() {
    Predictor likeliest = predictors.get(0);
    for (Predictor predictor : predictors) {
      boolean heavier = predictor.solved().weight() > likeliest.solved().weight();
      likeliest = heavier ? predictor : likeliest;
    }
    return likeliest;
  }

  /** The same method judged on the sites of some fields. */
  public Tried judgedIn(Set<String> fields) {
    List<LeftOut> own =
        leftOut.stream().filter(l -> fields.contains(data.parts().get(l.part()).field())).toList();
    return new Tried(method, data, predictors, own);
  }

  /** The CRPS of each site that was left out, by its field and its position there. */
  Map<String, Double> crpsBySite() {
    return leftOut.stream()
        .collect(Collectors.toMap(l -> key(data, l.part(), l.site()), LeftOut::crps));
  }

  /** A site's name in all data that hold its field. */
  static String key(Observations data, int part, int site) {
    return data.parts().get(part).field() + "\n" + site;
  }

  /** The same predictors under the name of another method. */
  Tried as(SurfaceMethod other) {
    return new Tried(other, data, predictors, leftOut);
  }

  /** The sites that were left out, but for some. */
  List<LeftOut> leftOutWithout(Set<String> sites) {
    return leftOut.stream().filter(l -> !sites.contains(key(data, l.part(), l.site()))).toList();
  }

  double meanCrps() {
    return mean(LeftOut::crps);
  }

  private double mean(ToDoubleFunction<LeftOut> figure) {
    return leftOut.stream().mapToDouble(figure).average().orElse(0);
  }

  /** The figures of the report. */
  public SurfaceReport.Candidate candidate() {
    double[] squared =
        leftOut.stream().mapToDouble(LeftOut::squaredStandardised).sorted().toArray();
    return new SurfaceReport.Candidate(
        method,
        leftOut.size(),
        Math.sqrt(mean(l -> l.error() * l.error())),
        mean(l -> Math.abs(l.error())),
        mean(LeftOut::error),
        meanCrps(),
        Arrays.stream(squared).average().orElse(0),
        median(squared),
        mean(l -> Math.abs(l.chanceBelow() - 0.5) <= 0.45 ? 1 : 0));
  }

  public static double median(double[] sorted) {
    int n = sorted.length;
    return n == 0 ? 0 : (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
  }
}
