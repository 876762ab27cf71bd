package fieldsalt.surface.choice;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.gaussian.Prediction;
import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.fit.SurfaceDetails;
import fieldsalt.surface.site.Drift;
import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.Observations;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A second test: all rows of one laboratory, ranch-wide, predicted from the rows of the others as
 * far as these reach their fields. It shows a laboratory that does not fit in.
 */
final class LaboratoriesLeftOut {
  private static final double NINETY = 1.644854;
  private final SiteReadings readings;
  private final List<Drift> drifts;
  private final CovarianceModel model;

  LaboratoriesLeftOut(SiteReadings readings, List<Drift> drifts, CovarianceModel model) {
    this.readings = readings;
    this.drifts = List.copyOf(drifts);
    this.model = model;
  }

  /** One check a laboratory, by name; none if there is one laboratory only. */
  List<SurfaceDetails.LaboratoryCheck> checks() {
    List<String> names =
        readings.rows().stream().map(SiteReadings.Row::laboratory).distinct().sorted().toList();
    List<SurfaceDetails.LaboratoryCheck> checks = new ArrayList<>();
    for (String name : names.size() > 1 ? names : List.<String>of()) {
      check(name).ifPresent(checks::add);
    }
    return checks;
  }

  private Optional<SurfaceDetails.LaboratoryCheck> check(String laboratory) {
    Observations others = only(r -> !r.laboratory().equals(laboratory));
    Observations own = only(r -> r.laboratory().equals(laboratory));
    Solved solved = Solved.of(others, model);
    List<Predicted> predicted = new ArrayList<>();
    for (FieldRows rows : own.parts()) {
      int part = others.indexOf(rows.field());
      if (part >= 0) {
        predicted.add(predict(solved, part, rows));
      }
    }
    return predicted.isEmpty() ? Optional.empty() : Optional.of(figures(laboratory, predicted));
  }

  private Observations only(java.util.function.Predicate<SiteReadings.Row> wanted) {
    List<SiteReadings.Row> rows = readings.rows().stream().filter(wanted).toList();
    return Observations.of(readings.withRows(rows), drifts);
  }

  /** Rows of one field as the other laboratories see them; {@code prior} given the effects. */
  private record Predicted(FieldRows rows, Prediction prediction, double[][] prior) {}

  private Predicted predict(Solved solved, int part, FieldRows own) {
    FieldRows seen = solved.data().parts().get(part);
    double[][] covariances = new double[seen.rows().size()][own.rows().size()];
    for (int i = 0; i < covariances.length; i++) {
      for (int j = 0; j < covariances[i].length; j++) {
        covariances[i][j] = covariance(site(seen, i), site(own, j));
      }
    }
    double[][] prior = new double[own.rows().size()][own.rows().size()];
    for (int i = 0; i < prior.length; i++) {
      for (int j = 0; j < prior.length; j++) {
        prior[i][j] = covariance(site(own, i), site(own, j)) + (i == j ? own.own()[i] : 0);
      }
    }
    double[][] constant = new double[1][prior.length];
    java.util.Arrays.fill(constant[0], 1);
    return new Predicted(
        own,
        solved.solution().predict(part, covariances, constant, shared(solved.data(), own)),
        prior);
  }

  private static SiteReadings.Site site(FieldRows rows, int row) {
    return rows.sites().get(rows.siteOf()[row]);
  }

  private double covariance(SiteReadings.Site one, SiteReadings.Site other) {
    if (one.equals(other)) {
      return model.pointVariance();
    }
    double[] a = model.anisotropy().stretch(one.place().xM(), one.place().yM());
    double[] b = model.anisotropy().stretch(other.place().xM(), other.place().yM());
    return model.covariance(Math.hypot(a[0] - b[0], a[1] - b[1]));
  }

  private static double[][] shared(Observations seen, FieldRows own) {
    int n = own.rows().size();
    double[][] design = new double[seen.shared()][n];
    for (int d = 0; d < seen.drifts().size(); d++) {
      for (int i = 0; i < n; i++) {
        design[d][i] = seen.drifts().get(d).at(site(own, i).place());
      }
    }
    for (int k = 0; k < own.loadings().length; k++) {
      design[seen.drifts().size() + k] = own.loadings()[k].clone();
    }
    return design;
  }

  private static SurfaceDetails.LaboratoryCheck figures(
      String laboratory, List<Predicted> predicted) {
    int n = 0;
    double bias = 0;
    double square = 0;
    int inside = 0;
    for (Predicted p : predicted) {
      double[] values = p.rows().values();
      double[] change = p.prediction().varianceChange();
      for (int i = 0; i < values.length; i++) {
        double error = values[i] - p.prediction().mean()[i];
        double variance = p.prior()[i][i] + change[i];
        n++;
        bias += error;
        square += error * error;
        inside += Math.abs(error) <= NINETY * Math.sqrt(variance) ? 1 : 0;
      }
    }
    double biasError = Math.sqrt(Math.max(0, total(predicted))) / n;
    return new SurfaceDetails.LaboratoryCheck(
        laboratory, n, bias / n, biasError, Math.sqrt(square / n), (double) inside / n);
  }

  /** Variance of the sum of all errors: fields have only the shared effects in common. */
  private static double total(List<Predicted> predicted) {
    double sum = 0;
    double[] shared = new double[predicted.get(0).prediction().fromShared().length];
    for (Predicted p : predicted) {
      sum += sum(p.prediction().ownCovarianceChange(p.prediction())) + sum(p.prior());
      for (int k = 0; k < shared.length; k++) {
        shared[k] += java.util.Arrays.stream(p.prediction().fromShared()[k]).sum();
      }
    }
    for (double s : shared) {
      sum += s * s;
    }
    return sum;
  }

  private static double sum(double[][] matrix) {
    double sum = 0;
    for (double[] row : matrix) {
      sum += java.util.Arrays.stream(row).sum();
    }
    return sum;
  }
}
