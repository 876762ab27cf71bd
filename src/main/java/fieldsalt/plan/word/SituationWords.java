package fieldsalt.plan.word;

import fieldsalt.plan.zone.Situation;
import fieldsalt.quantity.Measure;

/** What is told to the grower about the situation of a zone. */
final class SituationWords {
  private SituationWords() {}

  /**
   * Of one zone.
   *
   * @param ece its mean
   * @param drained whether it is proved that water can leave
   * @param gypsumIsOpen whether gypsum is to be considered all the same
   */
  static Sentence of(
      Situation situation, Measure ece, String crop, boolean drained, boolean gypsumIsOpen) {
    return switch (situation) {
      case SALINE ->
          Sentence.of(
              "saline",
              "Salt holds "
                  + crop
                  + " back here (ECe {0}); sodium does not"
                  + (gypsumIsOpen ? " yet. What" : ". Gypsum would change nothing: what")
                  + " helps is water that passes through and drains away. "
                  + (drained
                      ? "See that the drainage carries it."
                      : "Find out first whether it can leave.")
                  + " Where it cannot, the salt is back within about two seasons.",
              ece);
      case SALINE_SODIUM_UNKNOWN ->
          Sentence.of(
              "saline-sodium-unknown",
              "Salt holds "
                  + crop
                  + " back here (ECe {0}). Whether sodium does too is not known: have it measured"
                  + " before you flush, because salt washed off a sodic soil leaves it sealed.",
              ece);
      case SALINE_SODIC ->
          Sentence.of(
              "saline-sodic",
              "Salt (ECe {0}) and too much sodium together. Do not flush yet: with the salt gone"
                  + " and the sodium left, the soil can close. First a way out for the water, then"
                  + " gypsum worked in, then leaching. Count on several seasons and sample after"
                  + " each.",
              ece);
      case SODIC ->
          Sentence.of(
              "sodic",
              "Little salt (ECe {0}), but sodium closes the soil. Gypsum first, then water to carry"
                  + " the sodium down. Try a strip beside an untreated one before the whole zone.",
              ece);
      case FINE ->
          Sentence.of(
              "fine",
              "ECe {0}: nothing measured here asks for treatment for "
                  + crop
                  + ". If it still grows badly, look at water, compaction, boron, nutrients and"
                  + " disease. Check the water once a year and core the same spots again.",
              ece);
    };
  }

  /** Said of a field whose map does not beat its mean. */
  static Sentence noBetterThanMean(Measure ece) {
    return Sentence.of(
        "map-no-better-than-mean",
        "The samples tell how much salt the field holds (ECe {0}), but not where. Do not vary rates"
            + " by this map: treat the field alike, or take the samples of the next round first.",
        ece);
  }

  /** The same of a field whose zones follow sodium. */
  static Sentence zonesBySodium(Measure ece) {
    return Sentence.of(
        "salt-no-better-than-mean",
        "The samples tell how much salt the field holds (ECe {0}), but not where. Its zones follow"
            + " sodium: vary gypsum by them, not leaching.",
        ece);
  }
}
