package fieldsalt.quantity;

import java.text.Normalizer;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** A unit of electrical conductivity, with the spellings that laboratories use. */
public enum EcUnit {
  DS_PER_M(
      "dS/m",
      1,
      " ds/m decisiemens/m dsm-1 dsm1 mmhos/cm mmho/cm mmhoscm-1 mmhocm-1 millimhos/cm"
          + " millimho/cm "),
  MS_PER_CM("mS/cm", 1, " ms/cm mscm-1 mscm1 millisiemens/cm "),
  US_PER_CM(
      "\u00b5S/cm",
      1e-3,
      " us/cm uscm-1 umhos/cm umho/cm micromhos/cm micromho/cm umhoscm-1 uscm1 microsiemens/cm "),
  MS_PER_M("mS/m", 1e-2, " ms/m msm-1 msm1 millisiemens/m "),
  S_PER_M("S/m", 10, " s/m sm-1 siemens/m ");

  private final String label;
  private final double dSPerM;
  private final String spellings;

  EcUnit(String label, double dSPerM, String spellings) {
    this.label = label;
    this.dSPerM = dSPerM;
    this.spellings = spellings;
  }

  /** The usual spelling. */
  public String label() {
    return label;
  }

  /** How many dS/m one of this unit is. */
  public double dSPerM() {
    return dSPerM;
  }

  /**
   * The unit that a text names, case-blind, both micro signs, with blanks, dots and superscripts as
   * they come; a temperature behind it ({@code @ 25 C}) is allowed. Empty if it names none.
   */
  public static Optional<EcUnit> of(String text) {
    String plain = plain(text);
    return Arrays.stream(values()).filter(u -> u.spellings.contains(" " + plain + " ")).findFirst();
  }

  private static String plain(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFKC)
        .replace('\u03bc', 'u')
        .replace('\u2212', '-')
        .toLowerCase(Locale.ROOT)
        .replaceAll("(@|at)?\\s*25\\s*(\u00b0|deg|degrees)?\\s*c?\\s*$", "")
        .replaceAll("[\\s.\u00b7*^()\\[\\]]", "")
        .replace("per", "/");
  }
}
