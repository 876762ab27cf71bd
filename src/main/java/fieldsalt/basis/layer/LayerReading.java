package fieldsalt.basis.layer;

import fieldsalt.basis.relation.EceRelation;
import fieldsalt.basis.relation.MethodKey;
import fieldsalt.finding.Finding;
import fieldsalt.read.sample.Sample;
import java.util.List;

/**
 * One reading of one layer on the basis, with the published factor and its errors kept apart.
 *
 * @param lnEce ln of ECe in dS/m
 * @param ownVariance of ln ECe, independent of every other row
 * @param shared the parts of its error that it has in common with other rows
 * @param relation the relation that gave it
 * @param factor ECe / EC, after temperature
 * @param findings about this row alone
 */
public record LayerReading(
    Sample sample,
    MethodKey method,
    double lnEce,
    double ownVariance,
    List<Term> shared,
    EceRelation relation,
    double factor,
    List<Finding> findings) {

  /** A shared offset with variance 1 and its size in this row. */
  public record Term(String offset, double sd) {}

  public LayerReading {
    shared = List.copyOf(shared);
    findings = List.copyOf(findings);
  }

  public double ece() {
    return Math.exp(lnEce);
  }

  /** The same in doubt: another value, with the variance of a mixture. */
  public LayerReading mixed(double otherLnEce, double variance) {
    return new LayerReading(
        sample, method, otherLnEce, variance, shared, relation, factor, findings);
  }

  /** The same with more error of its own. */
  LayerReading plusVariance(double more) {
    return new LayerReading(
        sample, method, lnEce, ownVariance + more, shared, relation, factor, findings);
  }
}
