package fieldsalt.facts;

import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * One published line ECe = slope EC + intercept, both in dS/m at 25 °C.
 *
 * @param relation author-year name of its paper's relation
 * @param texture a class, a group, or {@code ANY}
 * @param floor dS/m per dS/m: below floor x EC the line is not followed; empty if the line cannot
 *     reach 0
 * @param sdLn conversion error of ln ECe
 * @param ecMax largest EC of the soils it was fitted to, dS/m; empty where not known
 * @param region where those soils were
 * @param confidence S, S2, M or D, as the table's header explains
 */
public record PublishedLine(
    String relation,
    Method method,
    ReadingKind kind,
    String texture,
    double slope,
    double intercept,
    OptionalDouble floor,
    double sdLn,
    OptionalDouble ecMax,
    String region,
    String confidence) {

  private static final List<PublishedLine> ALL =
      FactTable.rows("ece_relations.csv").stream().map(PublishedLine::of).toList();

  /** The lines of one relation, in the table's order; empty if there are none. */
  public static List<PublishedLine> of(String relation) {
    return ALL.stream().filter(line -> line.relation.equals(relation)).toList();
  }

  private static PublishedLine of(Map<String, String> row) {
    return new PublishedLine(
        row.get("relation"),
        Method.of(row.get("method")).orElseThrow(),
        ReadingKind.valueOf(row.get("reading")),
        row.get("texture"),
        Double.parseDouble(row.get("slope")),
        Double.parseDouble(row.get("intercept")),
        Cells.number(row.get("floor")),
        Double.parseDouble(row.get("sd_ln")),
        Cells.number(row.get("ec_max")),
        row.get("region"),
        row.get("confidence"));
  }
}
