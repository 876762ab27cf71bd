package fieldsalt.report.input;

import java.util.List;

/**
 * What was done to the readings.
 *
 * @param kinds one a laboratory, method and soil
 * @param pairs one a kind of reading that was paired with saturated paste
 */
public record PageReadings(List<Kind> kinds, List<PairPlot> pairs) {
  public PageReadings {
    kinds = List.copyOf(kinds);
    pairs = List.copyOf(pairs);
  }

  /**
   * Readings that were treated alike.
   *
   * @param name e.g. {@code Lab A, 1:5 extract, medium}
   * @param rows how many
   * @param relation what brought them to ECe
   * @param citation where that is published
   * @param prior published factor with the standard deviation of its ln
   * @param posterior factor after the pairs; equal to prior without pairs
   * @param pairs used
   * @param sdAfterOneMore standard deviation of ln of the factor after one more pair
   */
  public record Kind(
      String name,
      int rows,
      String relation,
      String citation,
      Factor prior,
      Factor posterior,
      int pairs,
      double sdAfterOneMore) {}

  /** A multiplier of EC and the standard deviation of its ln. */
  public record Factor(double value, double sdLn) {
    public double low() {
      return value * Math.exp(-1.645 * sdLn);
    }

    public double high() {
      return value * Math.exp(1.645 * sdLn);
    }
  }

  /** Readings of one kind against the paste of the same soil, dS/m, with both lines. */
  public record PairPlot(String name, List<Pair> points, Factor prior, Factor posterior) {
    public PairPlot {
      points = List.copyOf(points);
    }
  }

  /** Two readings of one site and depth. */
  public record Pair(String site, double ec, double paste, boolean odd) {}
}
