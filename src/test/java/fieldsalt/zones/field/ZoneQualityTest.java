package fieldsalt.zones.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Shares of variance, worked out by hand. */
class ZoneQualityTest {
  private static final double[] VALUES = {1, 2, 3, 7, 9};
  private static final int[] GROUPS = {0, 0, 0, 1, 1};

  /** Means 2 and 8, of all 4.4: within 1 + 0 + 1 + 1 + 1 = 4; all 11.56 + 5.76 + ... = 47.2. */
  @Test
  void shareBetweenGroups() {
    assertThat(ZoneQuality.shareBetween(VALUES, GROUPS)).isCloseTo(1 - 4 / 47.2, within(1e-12));
  }

  /**
   * From the group's others: 1 - 2.5, 2 - 2, 3 - 1.5, 7 - 9, 9 - 7, squares 12.5. From all others:
   * 1 - 21/4, 2 - 5, 3 - 19/4, 7 - 15/4, 9 - 13/4, squares 73.75.
   */
  @Test
  void shareForetoldLeavesTheValueOut() {
    assertThat(ZoneQuality.predictedShare(VALUES, GROUPS).orElseThrow())
        .isCloseTo(1 - 12.5 / 73.75, within(1e-12));
  }

  /**
   * The value 9 alone: predicted by all others like everything is, so it adds nothing. 7 joins the
   * group of 1, 2, 3: 1 - 4, 2 - 11/3, 3 - 10/3, 7 - 2, squares 9 + 25/9 + 1/9 + 25; with 5.75
   * squared for the 9.
   */
  @Test
  void aValueAloneIsForetoldByAllOthers() {
    double byGroup = 9 + 25 / 9.0 + 1 / 9.0 + 25 + 33.0625;
    assertThat(ZoneQuality.predictedShare(VALUES, new int[] {0, 0, 0, 0, 1}).orElseThrow())
        .isCloseTo(1 - byGroup / 73.75, within(1e-12));
  }

  @Test
  void groupsThatMeanNothingForetellNothing() {
    double share =
        ZoneQuality.predictedShare(new double[] {1, 9, 1, 9}, new int[] {0, 0, 1, 1}).orElseThrow();
    assertThat(share).isNegative(); // each is predicted by the other extreme
  }

  @Test
  void placesInNoZoneAreLeftOut() {
    double[] more = {1, 2, 3, 7, 9, 1000};
    int[] groups = {0, 0, 0, 1, 1, -1};
    assertThat(ZoneQuality.predictedShare(more, groups))
        .isEqualTo(ZoneQuality.predictedShare(VALUES, GROUPS));
    assertThat(ZoneQuality.shareBetween(more, groups))
        .isEqualTo(ZoneQuality.shareBetween(VALUES, GROUPS));
  }

  @Test
  void tooFewOrAllAlikeIsNotKnown() {
    assertThat(ZoneQuality.predictedShare(new double[] {1, 2}, new int[] {0, 1})).isEmpty();
    assertThat(ZoneQuality.predictedShare(new double[] {5, 5, 5}, new int[] {0, 0, 1})).isEmpty();
    assertThat(ZoneQuality.predictedShare(new double[0], new int[0])).isEmpty();
  }
}
