package fieldsalt.basis.depth;

/**
 * The depth that a field's readings stand for.
 *
 * @param rootZone what was asked for
 * @param topCm upper bound of what was sampled within it, cm
 * @param bottomCm lower bound of what was sampled within it, cm
 * @param sampledShare of the root zone's weight, 0 to 1
 * @param fullProfiles sites whose layers cover all of it
 * @param incompleteSites sites that do not, with the rest predicted or their error widened
 * @param shape of the median profile
 */
public record FieldDepth(
    String field,
    RootZone rootZone,
    double topCm,
    double bottomCm,
    double sampledShare,
    int fullProfiles,
    int incompleteSites,
    ProfileShape shape) {

  /** Under half of the root zone was sampled: yields are an indication, leaching a draft. */
  public boolean topsoilOnly() {
    return sampledShare < 0.5 - 1e-9;
  }
}
