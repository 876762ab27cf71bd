package fieldsalt.report.section;

import fieldsalt.report.input.PageInput;
import fieldsalt.report.input.PageReadings;
import fieldsalt.report.markup.Markup;
import fieldsalt.report.markup.Section;
import fieldsalt.report.result.Citations;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;

/** The published sources that figures of this page rest on. */
public final class SourcesSection implements Section {
  private final PageInput input;

  public SourcesSection(PageInput input) {
    this.input = input;
  }

  @Override
  public String id() {
    return "sources";
  }

  @Override
  public String title() {
    return "Sources";
  }

  @Override
  public void body(Markup page) {
    page.in("ul", () -> citations(input).forEach(c -> page.line("li", c)));
  }

  /** Every citation used, sorted. */
  private static List<String> citations(PageInput input) {
    Stream<String> relations =
        input.readings().kinds().stream()
            .map(PageReadings.Kind::citation)
            .filter(c -> !c.isBlank());
    Stream<String> plan = input.citations().stream();
    return List.copyOf(
        new TreeSet<>(
            Stream.of(Citations.ALWAYS.stream(), relations, plan).flatMap(s -> s).toList()));
  }
}
