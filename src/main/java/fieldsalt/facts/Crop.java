package fieldsalt.facts;

import java.util.Optional;

/**
 * A crop of the published tables of salt tolerance.
 *
 * @param name as the table spells it, e.g. {@code Barley (grain)}
 * @param tolerance empty where the source gives a rating only
 * @param rating {@code S}, {@code MS}, {@code MT} or {@code T}; {@code *} marks an estimate. As
 *     published: it is not derived from the threshold; empty text for a crop of the user's own
 * @param group {@code field}, {@code forage}, {@code vegetable} or {@code woody}
 * @param edition year of the list that the row follows; editions are never mixed in one row
 * @param confidence {@code print} where both numbers were seen in print, else how they are known
 * @param note what else the source says; may be empty
 */
public record Crop(
    String name,
    String botanical,
    Optional<Tolerance> tolerance,
    String rating,
    String group,
    String edition,
    String source,
    String confidence,
    String note) {

  /**
   * The two lines of Maas &amp; Hoffman 1977.
   *
   * @param thresholdDsPerM ECe of the saturated paste up to which yield is full
   * @param slopePctPerDsPerM percent of the full yield lost per dS/m above it
   */
  public record Tolerance(double thresholdDsPerM, double slopePctPerDsPerM) {
    public Tolerance {
      if (!(thresholdDsPerM >= 0 && slopePctPerDsPerM > 0)) {
        throw new IllegalArgumentException(
            "threshold at least 0 and slope above 0, was "
                + thresholdDsPerM
                + " and "
                + slopePctPerDsPerM);
      }
    }
  }

  /** The rating in words. */
  public String ratingInWords() {
    String word =
        switch (rating.replace("*", "")) {
          case "S" -> "sensitive";
          case "MS" -> "moderately sensitive";
          case "MT" -> "moderately tolerant";
          case "T" -> "tolerant";
          case "" -> "not rated";
          default -> throw new IllegalStateException("unknown rating: " + rating);
        };
    return rating.endsWith("*") ? word + " (estimate)" : word;
  }

  /** Whether rootstock and chloride decide more than the table does (trees, vines, berries). */
  public boolean isWoody() {
    return group.equals("woody");
  }

  /** Whether threshold and slope were seen in print. */
  public boolean isSeenInPrint() {
    return confidence.equals("print");
  }

  /** Whether it grows in water, so that its table means the soil water while flooded. */
  public boolean isFlooded() {
    return name.startsWith("Rice");
  }
}
