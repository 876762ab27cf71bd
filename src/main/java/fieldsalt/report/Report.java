package fieldsalt.report;

import static java.nio.charset.StandardCharsets.UTF_8;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.handover.raster.SafeName;
import fieldsalt.read.Ranch;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.report.input.FieldInputs;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.Markup;
import fieldsalt.report.markup.Section;
import fieldsalt.report.section.CropsSection;
import fieldsalt.report.section.FindingsSection;
import fieldsalt.report.section.MapSection;
import fieldsalt.report.section.NextSection;
import fieldsalt.report.section.RanchSection;
import fieldsalt.report.section.ReadingsSection;
import fieldsalt.report.section.SourcesSection;
import fieldsalt.report.section.SummarySection;
import fieldsalt.report.section.SurenessSection;
import fieldsalt.report.section.TotalsSection;
import fieldsalt.report.section.ZonesSection;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * The page that people look at: one self-contained HTML document, no network. It says what there
 * is, where, what to do, how sure that is, and what every number rests on. A ranch of many fields
 * has an overview, whose table a small script sorts, and a page for each field.
 */
public final class Report {
  /** Name of the page in the output folder. */
  public static final String FILE = "report.html";

  /** Folder of the pages of single fields. */
  public static final String FIELDS = "fields";

  /**
   * Writes the page, and one for each field of a large ranch.
   *
   * @return the names of the files
   */
  public static List<String> write(Path folder, PageInput input) throws IOException {
    List<String> names = new ArrayList<>(List.of(FILE));
    Map<String, String> pages = input.isOverview() ? addresses(input) : Map.of();
    Files.writeString(
        folder.resolve(FILE), new Report(input, pages, Kind.of(input)).document(), UTF_8);
    if (input.isOverview()) {
      Files.createDirectories(folder.resolve(FIELDS));
      FieldInputs fields = new FieldInputs(input);
      for (FieldBoundary field : input.ranch().fields()) {
        if (pages.containsKey(field.name())) {
          String name = pages.get(field.name());
          Report report = new Report(fields.of(field), Map.of(), Kind.FIELD);
          Files.writeString(folder.resolve(name), report.document(), UTF_8);
          names.add(name);
        }
      }
    }
    return names;
  }

  /** Address of each mapped field's page, from the overview. */
  private static Map<String, String> addresses(PageInput input) {
    Map<String, String> pages = new LinkedHashMap<>();
    SafeName.of(input.schemes().keySet())
        .forEach((field, safe) -> pages.put(field, FIELDS + "/" + safe + ".html"));
    return pages;
  }

  /** What a page is about. */
  private enum Kind {
    RANCH,
    OVERVIEW,
    FIELD;

    static Kind of(PageInput input) {
      return input.isOverview() ? OVERVIEW : RANCH;
    }
  }

  private final PageInput input;
  private final Map<String, String> pages;
  private final Kind kind;
  private final Markup page = new Markup();

  private Report(PageInput input, Map<String, String> pages, Kind kind) {
    this.input = input;
    this.pages = pages;
    this.kind = kind;
  }

  /** The first page as text, to be written as UTF-8. */
  public static String html(PageInput input) {
    Map<String, String> pages = input.isOverview() ? addresses(input) : Map.of();
    return new Report(input, pages, Kind.of(input)).document();
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
    page.empty("meta", "http-equiv", "Content-Security-Policy", "content", policy());
    page.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
    page.line("title", ranchName() + ": " + subject());
    page.in("style", () -> page.trusted(resource("page.css")));
  }

  /** Nothing is fetched, and no script runs but the overview's own, known by its hash. */
  private String policy() {
    String scripts =
        kind == Kind.OVERVIEW ? "'sha256-" + hash(resource("sort.js")) + "'" : "'none'";
    return "default-src 'none'; img-src data:; style-src 'unsafe-inline'; script-src " + scripts;
  }

  private static String hash(String text) {
    try {
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(UTF_8));
      return Base64.getEncoder().encodeToString(digest);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  private String ranchName() {
    Ranch ranch = input.ranch();
    return ranch.name().isBlank() ? "Ranch without a name" : ranch.name();
  }

  private String subject() {
    String property = input.sites().property();
    return property.equals(SiteReadings.ECE) ? "Soil salinity" : property;
  }

  private static String resource(String name) {
    try (InputStream in = Report.class.getResourceAsStream("/fieldsalt/report/" + name)) {
      return new String(in.readAllBytes(), UTF_8);
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
    if (kind == Kind.OVERVIEW) {
      page.in("script", () -> page.trusted(resource("sort.js")));
    }
  }

  private void header(List<Section> sections) {
    if (kind == Kind.FIELD) {
      page.in("p", () -> page.line("a", "All fields of the ranch", "href", "../" + FILE));
      page.in("h1", () -> page.name(ranchName() + ", " + input.ranch().fields().get(0).name()));
    } else {
      page.in("h1", () -> page.name(ranchName()));
    }
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
    Section summary = new SummarySection(input, figures);
    Section totals = new TotalsSection(input, figures);
    Section next = new NextSection(input);
    Section findings = new FindingsSection(input.findings());
    if (kind == Kind.FIELD) {
      return List.of(
          summary,
          new MapSection(input, figures),
          new ZonesSection(input, figures),
          totals,
          next,
          findings);
    }
    List<Section> places =
        kind == Kind.OVERVIEW
            ? List.of(new RanchSection(input, figures, pages))
            : List.of(new MapSection(input, figures), new ZonesSection(input, figures));
    List<Section> rest =
        List.of(
            totals,
            new CropsSection(input),
            next,
            new SurenessSection(input, figures),
            new ReadingsSection(input, figures),
            findings,
            new SourcesSection(input));
    return Stream.of(List.of(summary), places, rest).flatMap(List::stream).toList();
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
