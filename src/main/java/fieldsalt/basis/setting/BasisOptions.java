package fieldsalt.basis.setting;

import java.util.Set;

/**
 * What a user may switch on.
 *
 * @param dropPairs ids whose paired readings are not used as pairs; only the paste is mapped there
 * @param invertPasteProbe convert a probe in the paste by Rhoades et al. 1989 with measured SP
 *     instead of refusing it
 * @param espFromOneToFive take ESP = 1.95 SAR1:5 + 1.8 (Rengasamy et al. 1984, unconfirmed)
 * @param poolCampaigns map every date of a field together instead of the newest campaign alone
 * @param campaignDays readings of one field farther apart than this are two campaigns
 * @param confirmed rows and ids whose readings a person has confirmed: they are never in doubt
 */
public record BasisOptions(
    Set<String> dropPairs,
    boolean invertPasteProbe,
    boolean espFromOneToFive,
    boolean poolCampaigns,
    int campaignDays,
    Set<String> confirmed) {
  public BasisOptions {
    dropPairs = Set.copyOf(dropPairs);
    confirmed = Set.copyOf(confirmed);
    if (campaignDays < 1) {
      throw new IllegalArgumentException("campaigns are at least 1 day apart, was " + campaignDays);
    }
  }

  public static BasisOptions defaults() {
    return new BasisOptions(Set.of(), false, false, false, 60, Set.of());
  }

  public BasisOptions withDropPairs(Set<String> ids) {
    return new BasisOptions(
        ids, invertPasteProbe, espFromOneToFive, poolCampaigns, campaignDays, confirmed);
  }

  public BasisOptions withInvertPasteProbe(boolean on) {
    return new BasisOptions(
        dropPairs, on, espFromOneToFive, poolCampaigns, campaignDays, confirmed);
  }

  public BasisOptions withEspFromOneToFive(boolean on) {
    return new BasisOptions(
        dropPairs, invertPasteProbe, on, poolCampaigns, campaignDays, confirmed);
  }

  public BasisOptions withPoolCampaigns(boolean on) {
    return new BasisOptions(
        dropPairs, invertPasteProbe, espFromOneToFive, on, campaignDays, confirmed);
  }

  public BasisOptions withConfirmed(Set<String> rowsAndIds) {
    return new BasisOptions(
        dropPairs, invertPasteProbe, espFromOneToFive, poolCampaigns, campaignDays, rowsAndIds);
  }
}
