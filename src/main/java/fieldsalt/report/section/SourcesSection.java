package fieldsalt.report.section;

import fieldsalt.report.input.PageInput;
import fieldsalt.report.input.PageReadings;
import fieldsalt.report.markup.Markup;
import fieldsalt.report.markup.Section;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;

/** The published sources that figures of this page rest on. */
public final class SourcesSection implements Section {
  private static final List<String> ALWAYS =
      List.of(
          "Patterson H.D., Thompson R. 1971. Recovery of inter-block information when block sizes"
              + " are unequal. Biometrika 58: 545-554 (restricted likelihood of the variogram).",
          "Gneiting T., Raftery A.E. 2007. Strictly proper scoring rules, prediction, and"
              + " estimation. Journal of the American Statistical Association 102: 359-378"
              + " (CRPS).");
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
  public static List<String> citations(PageInput input) {
    Stream<String> relations =
        input.readings().kinds().stream()
            .map(PageReadings.Kind::citation)
            .filter(c -> !c.isBlank());
    Stream<String> plan = input.citations().stream();
    return List.copyOf(
        new TreeSet<>(Stream.of(ALWAYS.stream(), relations, plan).flatMap(s -> s).toList()));
  }
}
