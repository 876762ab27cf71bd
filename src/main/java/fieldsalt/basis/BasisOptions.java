package fieldsalt.basis;

/**
 * What a user may switch on.
 *
 * @param dropOutlyingPairs leave out pairs that disagree with the others by more than 3 sigma
 * @param invertPasteProbe convert a probe in the paste by Rhoades et al. 1989 with measured SP
 *     instead of refusing it
 * @param espFromOneToFive take ESP = 1.95 SAR1:5 + 1.8 (Rengasamy et al. 1984, unconfirmed)
 * @param acceptUnits keep readings whose unit looks wrong, because the user has confirmed it
 * @param campaignDays readings of one field farther apart than this are two campaigns
 */
public record BasisOptions(
    boolean dropOutlyingPairs,
    boolean invertPasteProbe,
    boolean espFromOneToFive,
    boolean acceptUnits,
    int campaignDays) {
  public static BasisOptions defaults() {
    return new BasisOptions(false, false, false, false, 60);
  }

  public BasisOptions withDropOutlyingPairs(boolean on) {
    return new BasisOptions(on, invertPasteProbe, espFromOneToFive, acceptUnits, campaignDays);
  }

  public BasisOptions withInvertPasteProbe(boolean on) {
    return new BasisOptions(dropOutlyingPairs, on, espFromOneToFive, acceptUnits, campaignDays);
  }

  public BasisOptions withEspFromOneToFive(boolean on) {
    return new BasisOptions(dropOutlyingPairs, invertPasteProbe, on, acceptUnits, campaignDays);
  }

  public BasisOptions withAcceptUnits(boolean on) {
    return new BasisOptions(
        dropOutlyingPairs, invertPasteProbe, espFromOneToFive, on, campaignDays);
  }
}
