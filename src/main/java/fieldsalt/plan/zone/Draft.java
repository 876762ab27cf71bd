package fieldsalt.plan.zone;

import fieldsalt.finding.Code;
import java.util.List;

/**
 * Whether a plan may be acted on.
 *
 * @param reasons why not, each with what would lift it; empty if nothing undermines it
 */
public record Draft(List<Reason> reasons) {
  /** What stands before a draft plan. */
  public static final String MARK = "draft: do not act on it yet";

  /** One thing that undermines the plan. */
  public record Reason(Code code, String why, String lift) {}

  public Draft {
    reasons = List.copyOf(reasons);
  }

  public boolean isDraft() {
    return !reasons.isEmpty();
  }
}
