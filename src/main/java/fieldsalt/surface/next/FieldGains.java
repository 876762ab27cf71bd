package fieldsalt.surface.next;

/**
 * What of a field's block is needed to weigh readings of it: small, so that the blocks of all
 * fields need not be held at once.
 *
 * @param own variance of each reading's element given the shared effects
 * @param loadings of each reading's element on them
 * @param zoneWith own covariance of each reading's element with the mean of each zone
 * @param zoneVariance own variance of each zone's mean
 * @param zoneLoadings of each zone's mean
 * @param spreadWith own covariance of each reading's element with the sum over the field's places
 * @param spreadVariance own variance of that sum
 * @param spreadLoadings of that sum
 */
record FieldGains(
    double[] own,
    double[][] loadings,
    double[][] zoneWith,
    double[] zoneVariance,
    double[][] zoneLoadings,
    double[] spreadWith,
    double spreadVariance,
    double[] spreadLoadings) {

  /**
   * Of a block as it stands.
   *
   * @param elements of the readings that could be made
   * @param from first of the places spread over the field
   * @param size how many these are
   */
  static FieldGains of(FieldBlock block, int[] elements, int from, int size) {
    int n = elements.length;
    int zones = block.zoneCount();
    FieldGains gains =
        new FieldGains(
            new double[n],
            new double[n][],
            new double[n][zones],
            new double[zones],
            new double[zones][],
            new double[n],
            block.sumVariance(from, size),
            block.sumLoadings(from, size));
    for (int z = 0; z < zones; z++) {
      gains.zoneVariance[z] = block.zoneVariance(z);
      gains.zoneLoadings[z] = block.zoneLoadings(z);
    }
    for (int i = 0; i < n; i++) {
      gains.own[i] = block.own(elements[i]);
      gains.loadings[i] = block.loadings(elements[i]).clone();
      gains.spreadWith[i] = block.sumWith(from, size, elements[i]);
      for (int z = 0; z < zones; z++) {
        gains.zoneWith[i][z] = block.zoneWith(z, elements[i]);
      }
    }
    return gains;
  }
}
