package fieldsalt.report.section;

import fieldsalt.classes.ClassScheme;
import fieldsalt.report.draw.Colours;
import fieldsalt.report.draw.Swatch;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.input.PageSodicity;
import fieldsalt.report.input.PageZone;
import fieldsalt.report.input.ZoneAdvice;
import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.HtmlTable;
import fieldsalt.report.markup.Markup;
import java.util.List;

/** The zones of one field: a line each in a table, and more on each for who opens it. */
final class ZoneTable {
  private final PageInput input;
  private final Figures figures;
  private final List<String> told;

  /**
   * @param told reasons for a draft that were told for the whole field
   */
  ZoneTable(PageInput input, Figures figures, List<String> told) {
    this.input = input;
    this.figures = figures;
    this.told = List.copyOf(told);
  }

  void write(Markup page, List<PageZone> zones) {
    HtmlTable table = table();
    table.write(page, () -> zones.forEach(z -> row(page, table, z)));
    if (zones.stream().anyMatch(z -> hasMore(z.advice()))) {
      page.in(
          "details",
          () -> {
            page.line("summary", "More on each zone");
            zones.forEach(z -> more(page, z));
          });
    }
  }

  private HtmlTable table() {
    String caption =
        "Mean " + figures.property() + " with the interval that holds it 9 times in 10";
    return isPlanned()
        ? new HtmlTable(
            caption + "; yield, by salt alone, as a share of the same crop's on good ground",
            "Zone",
            "Salt",
            "What to do",
            "Why",
            "What it takes",
            "How sure")
        : new HtmlTable(caption, "Zone", figures.property());
  }

  private boolean isPlanned() {
    return figures.isEce();
  }

  private void row(Markup page, HtmlTable table, PageZone z) {
    page.in(
        "tr",
        () -> {
          table.header(page, "Zone", () -> name(page, z));
          table.cell(page, isPlanned() ? "Salt" : figures.property(), () -> value(page, z));
          if (isPlanned()) {
            plan(page, table, z);
          }
        },
        "id",
        ZonesSection.anchor(input, z),
        "role",
        "row");
  }

  private void plan(Markup page, HtmlTable table, PageZone z) {
    table.cell(page, "What to do", () -> toDo(page, z));
    table.cell(page, "Why", () -> page.text(z.advice().why()));
    table.cell(page, "What it takes", () -> page.text(z.advice().cost()));
    table.cell(page, "How sure", () -> sure(page, z));
  }

  private void name(Markup page, PageZone z) {
    ClassScheme scheme = input.schemes().get(z.zone().field());
    String colour = Colours.ofClass(z.zone().klass(), scheme.labels().size());
    Swatch.write(page, colour, "class " + z.zone().label());
    page.name(z.zone().name());
    page.line("span", figures.area(z.zone().areaHa()), "class", "small");
  }

  private void value(Markup page, PageZone z) {
    page.text(figures.value(z.low(), z.mean(), z.high()));
    z.yieldPct()
        .ifPresent(
            y -> page.line("span", "yield about " + Figures.percent(y / 100), "class", "small"));
    z.sodicity().ifPresent(s -> page.line("span", s.label() + ": " + sodium(s), "class", "small"));
  }

  /** {@code SAR 18 (12 to 25)}. */
  static String sodium(PageSodicity s) {
    return s.property()
        + " "
        + Figures.interval(s.low(), s.mean(), s.high())
        + (s.unit().isEmpty() ? "" : Figures.GAP + s.unit());
  }

  private void toDo(Markup page, PageZone z) {
    if (z.advice().isDraft()) {
      page.line("strong", "Draft. ", "class", "draft");
    }
    page.line("strong", z.advice().headline());
  }

  private void sure(Markup page, PageZone z) {
    List<String> own = z.advice().draft().stream().filter(d -> !told.contains(d)).toList();
    page.text(own.isEmpty() ? z.advice().sure() : Words.ended(z.advice().sure()));
    if (!own.isEmpty()) {
      page.text(" To lift the draft mark: " + String.join("; ", own) + ".");
    }
  }

  private static boolean hasMore(ZoneAdvice advice) {
    return !(advice.steps().isEmpty()
        && advice.story().isEmpty()
        && advice.amounts().isEmpty()
        && advice.cautions().isEmpty());
  }

  private static void more(Markup page, PageZone z) {
    ZoneAdvice advice = z.advice();
    if (!hasMore(advice)) {
      return;
    }
    page.in("h4", () -> page.name(z.zone().name()));
    if (advice.steps().size() > 1) {
      page.in("ol", () -> advice.steps().forEach(s -> page.line("li", s)));
    }
    advice.story().forEach(s -> page.line("p", s));
    if (!advice.amounts().isEmpty()) {
      page.in(
          "dl",
          () -> advice.amounts().forEach(a -> page.line("dt", a.what()).line("dd", a.value())));
    }
    advice.cautions().forEach(c -> page.line("p", c, "class", "caution"));
  }
}
