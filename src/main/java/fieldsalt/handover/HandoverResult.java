package fieldsalt.handover;

import fieldsalt.finding.Finding;
import fieldsalt.handover.folder.WrittenFile;
import java.util.List;

/** What was written, in the order in which people look for it, and what they must know of it. */
public record HandoverResult(List<WrittenFile> files, List<Finding> findings) {
  public HandoverResult {
    files = List.copyOf(files);
    findings = List.copyOf(findings);
  }
}
