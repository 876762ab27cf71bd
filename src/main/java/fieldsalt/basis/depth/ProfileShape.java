package fieldsalt.basis.depth;

/**
 * How salinity changes with depth: mean ECe of the top third over that of the bottom third of the
 * root zone. Limits: common practice.
 */
public enum ProfileShape {
  /** Above 1.5: salt is coming up; look for a water table first. */
  INVERTED,
  EVEN,
  /** Below 0.67: salt has been leached down, as under irrigation. */
  NORMAL,
  /** The bottom third was not sampled. */
  UNKNOWN;

  /** The shape at a ratio of top third to bottom third. */
  static ProfileShape of(double topToBottom) {
    if (topToBottom > 1.5) {
      return INVERTED;
    }
    return topToBottom < 0.67 ? NORMAL : EVEN;
  }
}
