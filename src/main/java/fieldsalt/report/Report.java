package fieldsalt.report;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.read.Ranch;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.Markup;
import fieldsalt.report.markup.Section;
import fieldsalt.report.section.CropsSection;
import fieldsalt.report.section.FindingsSection;
import fieldsalt.report.section.MapSection;
import fieldsalt.report.section.NextSection;
import fieldsalt.report.section.ReadingsSection;
import fieldsalt.report.section.SourcesSection;
import fieldsalt.report.section.SummarySection;
import fieldsalt.report.section.SurenessSection;
import fieldsalt.report.section.TotalsSection;
import fieldsalt.report.section.ZonesSection;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * The page that people look at: one self-contained HTML document, no network, no script. It says
 * what there is, where, what to do, how sure that is, and what every number rests on.
 */
public final class Report {
  /** Name of the page in the output folder. */
  public static final String FILE = "report.html";

  /** Writes the page. */
  public static void write(Path folder, PageInput input) throws IOException {
    Files.writeString(folder.resolve(FILE), html(input), StandardCharsets.UTF_8);
  }

  private final PageInput input;
  private final Markup page = new Markup();

  private Report(PageInput input) {
    this.input = input;
  }

  /** The document as text, to be written as UTF-8. */
  public static String html(PageInput input) {
    return new Report(input).document();
  }

  private String document() {
    page.trusted("<!DOCTYPE html>\n");
    page.in("html", this::headAndBody, "lang", "en");
    return page.toString();
  }

  private void headAndBody() {
    page.in("head", this::head);
    page.in("body", this::body);
  }

  private void head() {
    page.empty("meta", "charset", "utf-8");
    page.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
    page.line("title", ranchName() + ": " + subject());
    page.in("style", () -> page.trusted(styleSheet()));
  }

  private String ranchName() {
    Ranch ranch = input.ranch();
    return ranch.name().isBlank() ? "Ranch without a name" : ranch.name();
  }

  private String subject() {
    String property = input.sites().property();
    return property.equals(SiteReadings.ECE) ? "Soil salinity" : property;
  }

  private static String styleSheet() {
    try (InputStream in = Report.class.getResourceAsStream("/fieldsalt/report/page.css")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void body() {
    List<Section> sections = sections().stream().filter(Section::isNeeded).toList();
    page.line("a", "To the summary", "class", "skip", "href", "#summary");
    page.in("header", () -> header(sections));
    page.in("main", () -> sections.forEach(s -> s.write(page)));
    page.in("footer", this::footer);
  }

  private void header(List<Section> sections) {
    page.in("h1", () -> page.name(ranchName()));
    page.line("p", subject() + ": where it is, what to do, how sure that is", "class", "sub");
    page.in(
        "nav",
        () -> page.in("ul", () -> sections.forEach(this::link)),
        "aria-label",
        "Parts of this page");
  }

  private void link(Section section) {
    page.in("li", () -> page.line("a", section.title(), "href", "#" + section.id()));
  }

  private List<Section> sections() {
    Figures figures =
        new Figures(input.settings().units(), input.sites().property(), input.sites().unit());
    return List.of(
        new SummarySection(input, figures),
        new MapSection(input, figures),
        new ZonesSection(input, figures),
        new TotalsSection(input, figures),
        new CropsSection(input),
        new NextSection(input),
        new SurenessSection(input, figures),
        new ReadingsSection(input, figures),
        new FindingsSection(input.findings()),
        new SourcesSection(input));
  }

  private void footer() {
    page.line(
        "p",
        "Made by fieldsalt "
            + input.settings().version()
            + ". Every figure is in run.json beside this page, with the settings it was made"
            + " with.");
  }
}
