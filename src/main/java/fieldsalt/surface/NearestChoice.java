package fieldsalt.surface;

/**
 * The nearest of a few candidates, by a threshold: from a first guess of the distance of the last
 * one chosen, to the next farther or nearer candidate until the count is right. Quick where the
 * guess is good, as it is within a group of nearby places. Of candidates at the last distance, the
 * earlier ones are taken.
 *
 * <p>Squared distances are kept by their bits, which as whole numbers have the same order and are
 * compared without branches.
 */
final class NearestChoice {
  private final long[] key;
  private final int[] chosen;
  private int count;
  private int candidates;

  NearestChoice(int mostCandidates) {
    key = new long[mostCandidates];
    chosen = new int[mostCandidates];
  }

  /** Forgets all. */
  void clear() {
    candidates = 0;
    count = 0;
  }

  /** Adds the next candidate. */
  void add(double squaredM2) {
    key[candidates++] = Double.doubleToRawLongBits(squaredM2);
  }

  /** How many were chosen. */
  int count() {
    return count;
  }

  /** Positions of the chosen among the candidates as they were added, ascending. */
  int[] chosen() {
    return chosen;
  }

  /**
   * Chooses.
   *
   * @param wanted how many, 1 to the number of candidates
   * @param guess squared distance of the last one chosen, roughly
   */
  void choose(int wanted, double guess) {
    long last = last(wanted, Double.doubleToRawLongBits(guess));
    takeUpTo(last);
    for (int c = candidates - 1; count > wanted; c--) {
      if (key[c] == last) {
        drop(c);
      }
    }
  }

  private void takeUpTo(long last) {
    int taken = 0;
    for (int c = 0; c < candidates; c++) {
      chosen[taken] = c;
      taken += key[c] <= last ? 1 : 0;
    }
    count = taken;
  }

  private void drop(int candidate) {
    int kept = 0;
    for (int i = 0; i < count; i++) {
      chosen[kept] = chosen[i];
      kept += chosen[i] == candidate ? 0 : 1;
    }
    count = kept;
  }

  /** The wanted-th smallest. */
  private long last(int wanted, long guess) {
    long t = guess;
    int upTo = countUpTo(t);
    while (upTo < wanted) {
      t = smallestAbove(t);
      upTo = countUpTo(t);
    }
    while (upTo > wanted) {
      long next = largestBelow(t + 1);
      upTo = countUpTo(next - 1);
      t = upTo < wanted ? next : next - 1;
    }
    return t;
  }

  private int countUpTo(long limit) {
    int upTo = 0;
    for (int c = 0; c < candidates; c++) {
      upTo += key[c] <= limit ? 1 : 0;
    }
    return upTo;
  }

  private long largestBelow(long limit) {
    long largest = -1;
    for (int c = 0; c < candidates; c++) {
      largest = Math.max(largest, key[c] < limit ? key[c] : -1);
    }
    return largest;
  }

  private long smallestAbove(long limit) {
    long smallest = Long.MAX_VALUE;
    for (int c = 0; c < candidates; c++) {
      smallest = Math.min(smallest, key[c] > limit ? key[c] : Long.MAX_VALUE);
    }
    return smallest;
  }
}
