package fieldsalt.handover.machine;

/**
 * A grid of rates over one field, in degrees, south-west cell first, west to east, then the next
 * row to the north.
 *
 * @param rates raw rate of each cell, {@link #OUTSIDE} where its centre is outside the field
 * @param tonnes what the grid spreads
 * @param planTonnes what the plan spreads: the sum of rate times area over the zones
 */
record TaskGrid(
    double minNorth,
    double minEast,
    double cellNorth,
    double cellEast,
    int columns,
    int rows,
    int[] rates,
    double tonnes,
    double planTonnes) {
  static final int OUTSIDE = -1;

  /** How far the grid's tonnes are off the plan's, as a share of the plan's. */
  double error() {
    return planTonnes == 0 ? 0 : Math.abs(tonnes - planTonnes) / planTonnes;
  }
}
