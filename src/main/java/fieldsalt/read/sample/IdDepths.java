package fieldsalt.read.sample;

import fieldsalt.read.word.DepthText;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;

/**
 * Takes the layer off ids that end in one ({@code P7 0-30}), so that the layers of a profile share
 * their id; with {@code id-pattern} the job says what of an id is the site.
 */
final class IdDepths {
  private final ReadingRules rules;
  private final boolean everywhere;

  private IdDepths(List<ParsedRow> rows, ReadingRules rules) {
    this.rules = rules;
    this.everywhere = !rules.idPatternGiven() && carryLayers(rows);
  }

  /** The rows with bare ids; a layer taken off fills in where the row gives no depth. */
  static List<ParsedRow> takenOff(List<ParsedRow> rows, ReadingRules rules) {
    IdDepths ids = new IdDepths(rows, rules);
    return rows.stream().map(ids::bare).toList();
  }

  /**
   * Whether the ids carry the layers: no depth elsewhere, every id ends in one, some start at 0.
   */
  private boolean carryLayers(List<ParsedRow> rows) {
    boolean fromTop = false;
    for (ParsedRow row : rows) {
      Matcher m = rules.idPattern().matcher(row.id());
      Optional<DepthText> suffix =
          m.find() && m.groupCount() > 1 ? DepthText.of(m.group(2)) : Optional.empty();
      if (row.depth().isPresent() || suffix.flatMap(DepthText::top).isEmpty()) {
        return false;
      }
      fromTop |= suffix.get().top().get() == 0;
    }
    return fromTop;
  }

  private ParsedRow bare(ParsedRow row) {
    Matcher m = rules.idPattern().matcher(row.id());
    if (!m.find() || m.groupCount() < 1 || m.group(1) == null || m.group(1).isBlank()) {
      return row;
    }
    String id = m.group(1).strip();
    if (rules.idPatternGiven()) {
      return row.renamed(id, row.depth());
    }
    Optional<DepthText> suffix = DepthText.of(m.group(2));
    boolean meant = suffix.filter(s -> isMeant(s, row, id)).isPresent();
    return meant ? row.renamed(id, row.depth().or(() -> suffix)) : row;
  }

  private boolean isMeant(DepthText suffix, ParsedRow row, String id) {
    return everywhere
        || !suffix.unit().isEmpty()
        || row.depth().filter(suffix::isSameRange).isPresent()
        || rules.isSiteOnly(id, row.id());
  }
}
