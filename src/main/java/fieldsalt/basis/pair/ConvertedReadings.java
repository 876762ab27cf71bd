package fieldsalt.basis.pair;

import fieldsalt.finding.Finding;
import fieldsalt.quantity.DepthRange;
import fieldsalt.quantity.TextureGroup;
import fieldsalt.read.sample.Sample;
import java.util.List;

/**
 * Every reading on the saturated-paste basis, with what the pairs say about the factors.
 *
 * @param rows one a usable reading, in the order of the samples
 * @param groups one a laboratory, method and texture group that has a factor
 * @param pairs readings of one layer by two methods, for the plot
 * @param slopes of laboratories and methods with twelve pairs or more
 * @param means by field and depth
 * @param findings about rows left out, rows kept, pairs and groups
 */
public record ConvertedReadings(
    List<Row> rows,
    List<Group> groups,
    List<Pair> pairs,
    List<LnSlope> slopes,
    List<Mean> means,
    List<Finding> findings) {

  public ConvertedReadings {
    rows = List.copyOf(rows);
    groups = List.copyOf(groups);
    pairs = List.copyOf(pairs);
    slopes = List.copyOf(slopes);
    means = List.copyOf(means);
    findings = List.copyOf(findings);
  }

  /**
   * One reading. A paste reading keeps its own value; others take the factor after pairs, and an
   * interval that does not count on their own pair.
   *
   * @param ece dS/m
   * @param low lower end of the 90 % interval, dS/m
   * @param high upper end of the 90 % interval, dS/m
   * @param factor ECe / EC as used
   */
  public record Row(
      Sample sample,
      String method,
      double ece,
      double low,
      double high,
      double factor,
      String relation,
      String citation,
      String confidence,
      List<Finding> findings) {
    public Row {
      findings = List.copyOf(findings);
    }
  }

  /**
   * A factor before and after pairs.
   *
   * @param priorFactor published, geometric mean over the group's readings
   * @param priorSdLn standard deviation of its logarithm (the shared error)
   * @param posteriorFactor after pairs
   * @param posteriorSdLn after pairs
   * @param ownSdLn what a single reading adds to it
   * @param readings in the group
   * @param pairs of them
   * @param sdLnAfterOneMore posterior error if one more pair were read
   */
  public record Group(
      String laboratory,
      String method,
      TextureGroup texture,
      double priorFactor,
      double priorSdLn,
      double posteriorFactor,
      double posteriorSdLn,
      double ownSdLn,
      int readings,
      int pairs,
      double sdLnAfterOneMore) {}

  /**
   * Two readings of one layer.
   *
   * @param ec of the cheaper method, dS/m
   * @param ece of the paste, dS/m (or of the better of two cheap methods, converted)
   * @param sigmas distance from what the other pairs say, in standard deviations
   */
  public record Pair(
      String id,
      DepthRange depth,
      String laboratory,
      String method,
      TextureGroup texture,
      double ec,
      double ece,
      double sigmas) {
    /** Off by more than three standard deviations. */
    public boolean isOutlying() {
      return Math.abs(sigmas) > 3;
    }
  }

  /**
   * Mean ECe of a field's layer over its sites, with the shared error whole.
   *
   * @param sites that were read
   * @param ece dS/m
   * @param sdLn standard deviation of its logarithm
   * @param low lower end of the 90 % interval, dS/m
   * @param high upper end of the 90 % interval, dS/m
   */
  public record Mean(
      String field,
      DepthRange depth,
      int sites,
      double ece,
      double sdLn,
      double low,
      double high) {}
}
