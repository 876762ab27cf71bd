package fieldsalt.basis.pair;

import fieldsalt.basis.layer.LayerKey;
import fieldsalt.basis.layer.LayerReading;
import fieldsalt.basis.layer.Offsets;
import fieldsalt.basis.site.SiteHandOver;
import fieldsalt.gaussian.GaussianState;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What the pairs alone say about the shared errors: best linear unbiased prediction with every
 * layer's true value free (a fixed effect with a flat prior). The free values drop out when each
 * reading of a layer is compared with the precision-weighted mean of those before it, and these
 * comparisons have independent errors, so the cost is linear in the pairs.
 */
final class FactorPosterior {
  private final Offsets offsets;
  private final List<Comparison> comparisons = new ArrayList<>();
  private final GaussianState state;

  /** One reading against the others of its layer. */
  private record Comparison(
      LayerKey layer,
      LayerReading reading,
      LayerReading other,
      double[] a,
      double noise,
      double d) {}

  /**
   * A pair and how it fits the others.
   *
   * @param reading the cheaper one of the two
   * @param other what it is compared with
   * @param sigmas its distance from what all other pairs say, in standard deviations
   */
  public record Fit(LayerKey layer, LayerReading reading, LayerReading other, double sigmas) {}

  /**
   * @param layers measured readings by layer
   * @param dropped ids whose readings are not compared
   */
  FactorPosterior(Map<LayerKey, List<LayerReading>> layers, Set<String> dropped, Offsets offsets) {
    this.offsets = offsets;
    layers.forEach(
        (key, rows) -> {
          if (rows.size() > 1 && !dropped.contains(key.id())) {
            compare(key, rows);
          }
        });
    GaussianState prior =
        GaussianState.of(new double[offsets.count()], SiteHandOver.identity(offsets.count()));
    GaussianState posterior = prior;
    for (Comparison c : comparisons) {
      posterior = posterior.observe(c.a, c.noise, c.d);
    }
    state = posterior;
  }

  private void compare(LayerKey key, List<LayerReading> rows) {
    LayerMean before = LayerMean.of(rows.get(0), offsets);
    for (int k = 1; k < rows.size(); k++) {
      LayerReading row = rows.get(k);
      LayerMean here = LayerMean.of(row, offsets);
      double[] a = here.loadings().clone();
      boolean informs = false;
      for (int i = 0; i < a.length; i++) {
        a[i] -= before.loadings()[i];
        informs |= a[i] != 0;
      }
      if (informs) {
        double noise = here.variance() + before.variance();
        comparisons.add(
            new Comparison(key, row, rows.get(0), a, noise, here.lnEce() - before.lnEce()));
      }
      before = before.with(here);
    }
  }

  /** Mean of a row's shared error, to be taken from its ln ECe. */
  double mean(Collection<LayerReading.Term> terms) {
    return state.mean(offsets.loadings(terms));
  }

  /** Variance of a row's shared error. */
  double variance(Collection<LayerReading.Term> terms) {
    return state.variance(offsets.loadings(terms)) + offsets.unknownVariance(terms);
  }

  /** Variance of the shared error in a weighted sum of rows. */
  double varianceOf(double[] loadings) {
    return state.variance(loadings);
  }

  double meanOf(double[] loadings) {
    return state.mean(loadings);
  }

  /** Standard deviation of a group's factor after one more pair, with this noise. */
  double sdAfterOneMore(
      Collection<LayerReading.Term> group, Collection<LayerReading.Term> paste, double noise) {
    double[] h = offsets.loadings(group);
    double[] a = h.clone();
    double[] p = offsets.loadings(paste);
    for (int i = 0; i < a.length; i++) {
      a[i] -= p[i];
    }
    double gain =
        state.gain(a, noise + offsets.unknownVariance(paste), new double[][] {h}, new double[] {1});
    return Math.sqrt(Math.max(0, state.variance(h) - gain));
  }

  /** Every comparison against what the others say, without refitting. */
  List<Fit> fits() {
    return comparisons.stream().map(this::fit).toList();
  }

  private Fit fit(Comparison c) {
    double after = state.variance(c.a);
    double left = c.noise - after;
    double predicted = left <= 0 ? Double.POSITIVE_INFINITY : c.noise * after / left;
    double residual = (c.d - state.mean(c.a)) * (predicted + c.noise) / c.noise;
    double sigmas = left <= 0 ? 0 : residual / Math.sqrt(predicted + c.noise);
    return new Fit(c.layer, c.reading, c.other, sigmas);
  }
}
