package fieldsalt.report.section;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.report.markup.Markup;
import fieldsalt.report.markup.Section;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Everything that was found and what was done about it, grouped by code and counted. */
public final class FindingsSection implements Section {
  private static final int SHOWN = 200;
  private final List<Finding> findings;

  public FindingsSection(List<Finding> findings) {
    this.findings = findings;
  }

  @Override
  public String id() {
    return "findings";
  }

  @Override
  public String title() {
    return "Findings (" + findings.size() + ")";
  }

  @Override
  public void body(Markup page) {
    if (findings.isEmpty()) {
      page.line("p", "Nothing in the files had to be mended or left out.");
      return;
    }
    page.line(
        "p",
        "What stood in the files or the results that you must know, and what was done about it.");
    Map<Code, List<Finding>> byCode =
        findings.stream()
            .collect(Collectors.groupingBy(Finding::code, LinkedHashMap::new, Collectors.toList()));
    byCode.forEach((code, group) -> group(page, code, group));
  }

  private static void group(Markup page, Code code, List<Finding> group) {
    page.in(
        "details",
        () -> {
          page.in(
              "summary",
              () ->
                  page.text(heading(code) + " ")
                      .line("span", "× " + group.size(), "class", "count"));
          page.in("ul", () -> group.stream().limit(SHOWN).forEach(f -> line(page, f)));
          more(page, group.size());
        },
        group.size() <= 3 ? new String[] {"open", "open"} : new String[0]);
  }

  private static void more(Markup page, int count) {
    if (count > SHOWN) {
      page.line("p", "And " + (count - SHOWN) + " more; all are in run.json.");
    }
  }

  private static void line(Markup page, Finding f) {
    page.in(
        "li",
        () ->
            page.in("b", () -> page.name(f.where()))
                .text(": ")
                .name(f.found())
                .text(Words.isEnded(f.found()) ? " " : ". ")
                .text(Words.ended(upperFirst(f.done()))));
  }

  /** {@code unit-slip} to {@code Unit slip}. */
  static String heading(Code code) {
    return upperFirst(code.id().replace('-', ' '));
  }

  private static String upperFirst(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + text.substring(1);
  }
}
