package fieldsalt.report.input;

import java.util.List;

/**
 * What to do in a zone, in words ready for the page.
 *
 * @param headline a few words, the same for zones that are to be treated alike
 * @param why one or two sentences
 * @param cost what it takes: amounts and, with prices, money; may be empty
 * @param sure how sure that is, in one sentence
 * @param draft what would lift the mark "draft: do not act on it yet"; empty if it is none
 * @param steps in their order, each with its amount
 * @param story the same told in whole sentences, for who wants to know more
 * @param amounts the plan's figures, each with its interval
 * @param cautions that stand beside this zone's decision
 */
public record ZoneAdvice(
    String headline,
    String why,
    String cost,
    String sure,
    List<String> draft,
    List<String> steps,
    List<String> story,
    List<PlannedAmount> amounts,
    List<String> cautions) {
  public ZoneAdvice {
    draft = List.copyOf(draft);
    steps = List.copyOf(steps);
    story = List.copyOf(story);
    amounts = List.copyOf(amounts);
    cautions = List.copyOf(cautions);
  }

  /** Of another property than ECe, of which nothing is planned. */
  static ZoneAdvice none() {
    List<String> no = List.of();
    return new ZoneAdvice("No plan", "", "", "", no, no, no, List.of(), no);
  }

  /**
   * A figure of the plan.
   *
   * @param value ready to be read, with unit and interval
   */
  public record PlannedAmount(String what, String value) {}

  public boolean isDraft() {
    return !draft.isEmpty();
  }
}
