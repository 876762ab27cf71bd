package fieldsalt.basis.relation;

import java.util.ArrayList;
import java.util.List;

/** What a relation says about one reading: an ECe with its error, or why it will not say. */
public sealed interface Outcome {

  /**
   * An ECe.
   *
   * @param dSPerM at 25 °C, always greater than 0
   * @param sdLn standard deviation of ln ECe from the conversion alone
   * @param warnings what the reader must be told, in plain words; often empty
   */
  record Ece(double dSPerM, double sdLn, List<String> warnings) implements Outcome {
    public Ece {
      if (!(dSPerM > 0 && Double.isFinite(dSPerM))) {
        throw new IllegalArgumentException("ECe must be above 0, was " + dSPerM);
      }
      if (!(sdLn >= 0 && Double.isFinite(sdLn))) {
        throw new IllegalArgumentException("sd of ln ECe must be at least 0, was " + sdLn);
      }
      warnings = List.copyOf(warnings);
    }

    /** The same with one more warning. */
    public Ece warn(String text) {
      List<String> more = new ArrayList<>(warnings);
      more.add(text);
      return new Ece(dSPerM, sdLn, more);
    }
  }

  /** No ECe, and the reason in plain words. */
  record Refusal(String reason) implements Outcome {}

  /** An ECe without warning. */
  static Ece ece(double dSPerM, double sdLn) {
    return new Ece(dSPerM, sdLn, List.of());
  }
}
