package fieldsalt.plan.word;

import static fieldsalt.quantity.Dimension.CONDUCTIVITY;

import fieldsalt.plan.soil.ZoneSalt;
import fieldsalt.quantity.Measure;

/** What is told to the grower about the situation of a zone. */
public final class SituationWords {
  private SituationWords() {}

  public static Sentence of(Situation situation, ZoneSalt salt, String crop, boolean drained) {
    Measure ece = new Measure(salt.meanEce(), salt.low(), salt.high(), CONDUCTIVITY);
    return switch (situation) {
      case SALINE ->
          Sentence.of(
              "saline",
              "Salt holds "
                  + crop
                  + " back here (ECe {0}); sodium does not. Gypsum would change nothing: what helps"
                  + " is water that passes through and drains away. "
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
  public static Sentence noBetterThanMean(double mean, double low, double high) {
    return Sentence.of(
        "map-no-better-than-mean",
        "The samples tell how much salt the field holds (ECe {0}), but not where. Do not vary rates"
            + " by this map: treat the field alike, or take the samples of the next round first.",
        new Measure(mean, low, high, CONDUCTIVITY));
  }

  /** The same of a field whose zones follow sodium. */
  public static Sentence zonesBySodium(double mean, double low, double high) {
    return Sentence.of(
        "salt-no-better-than-mean",
        "The samples tell how much salt the field holds (ECe {0}), but not where. Its zones follow"
            + " sodium: vary gypsum by them, not leaching.",
        new Measure(mean, low, high, CONDUCTIVITY));
  }
}
