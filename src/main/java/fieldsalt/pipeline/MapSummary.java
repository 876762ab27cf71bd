package fieldsalt.pipeline;

import fieldsalt.finding.Finding;
import java.util.List;

/**
 * What the terminal is told of a run.
 *
 * @param lines of result, for people
 * @param leftOut fields that were sampled but not mapped
 */
public record MapSummary(List<String> lines, List<String> leftOut, List<Finding> findings) {
  public MapSummary {
    lines = List.copyOf(lines);
    leftOut = List.copyOf(leftOut);
    findings = List.copyOf(findings);
  }
}
