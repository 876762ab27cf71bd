package fieldsalt.surface;

import fieldsalt.surface.covariance.CovarianceModel;
import fieldsalt.surface.covariance.Exponential;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The reference ranch of the simulations: 2000 x 1000 m, ln ECe with the covariance published for a
 * salinity survey (Brus 2022, Spatial Sampling with R, table 23.1: nugget 0.116, partial sill
 * 0.336, exponential 192 m), 1:5 by two laboratories and some saturated paste. Working choices: own
 * error of a 1:5 conversion 0.25, of paste 0.08, slope error of 1:5 0.10.
 */
final class ReferenceRanch {
  static final CovarianceModel MODEL = new CovarianceModel(new Exponential(192), 0.336, 0.116);
  private static final double WIDE_M = 2000;
  private static final int COLUMNS = 20;
  private static final int ROWS = 10;

  /** Zones of a fixed truth: eight squares of 25 ha. */
  private static final int SQUARE = 5;

  private ReferenceRanch() {}

  /** A fifth of the sites by paste only, a tenth by both, shared error 0.15. */
  static RanchCase mixed(int sites, double slopeSd, long seed) {
    return simulated(sites, RanchCase.Shared.evenly(0.15, slopeSd), sites / 5, sites / 10, seed);
  }

  /** Texture unknown: all 1:5 rows share an error of 0.29; 12 sites by both methods. */
  static RanchCase paired(int sites, long seed) {
    return simulated(sites, new RanchCase.Shared(0, 0.29, 0), 0, 12, seed);
  }

  /** The same total, half of its variance from each laboratory. */
  static RanchCase pairedByTwo(int sites, long seed) {
    return simulated(sites, RanchCase.Shared.evenly(0.29, 0), 0, 12, seed);
  }

  private static RanchCase simulated(
      int sites, RanchCase.Shared shared, int pasteOnly, int pairs, long seed) {
    return RanchCase.simulated(
        new RanchCase.Plan(1, sites, COLUMNS * ROWS, WIDE_M, MODEL, shared, pasteOnly, pairs),
        seed);
  }

  /** Positions among the ranch's places. */
  static List<int[]> squares() {
    List<int[]> squares = new ArrayList<>();
    for (int row = 0; row < ROWS; row += SQUARE) {
      for (int column = 0; column < COLUMNS; column += SQUARE) {
        int first = row * COLUMNS + column;
        squares.add(
            IntStream.range(0, SQUARE * SQUARE)
                .map(i -> first + i / SQUARE * COLUMNS + i % SQUARE)
                .toArray());
      }
    }
    return squares;
  }
}
