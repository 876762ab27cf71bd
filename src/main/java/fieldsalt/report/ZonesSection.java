package fieldsalt.report;

import fieldsalt.classes.ClassScheme;
import java.util.List;
import java.util.stream.Collectors;

/** For each zone what to do, why, what it costs and how sure: one table, one line a zone. */
final class ZonesSection implements Section {
  private final PageInput input;
  private final Figures figures;

  ZonesSection(PageInput input, Figures figures) {
    this.input = input;
    this.figures = figures;
  }

  @Override
  public String id() {
    return "zones";
  }

  @Override
  public String title() {
    return "Zone by zone: what to do";
  }

  @Override
  public void body(Markup page) {
    cautions(page);
    Table table =
        new Table(
            "Mean ECe with the interval that holds it 9 times in 10; yield as a share of the same crop's"
                + " on good ground",
            "Zone",
            "Salt",
            "What to do",
            "Why",
            "What it takes",
            "How sure");
    table.write(page, () -> input.zones().forEach(z -> row(page, table, z)));
    page.line("h3", "The plan's figures");
    input.zones().forEach(z -> details(page, z));
  }

  private void cautions(Markup page) {
    List<String> shared = shared();
    if (shared.isEmpty()) {
      return;
    }
    page.in(
        "div",
        () -> {
          page.line("strong", "Before any money is spent");
          page.in("ul", () -> shared.forEach(c -> page.line("li", c)));
        },
        "class",
        "caution",
        "role",
        "note");
  }

  /** Cautions that every zone carries are told once, above the table. */
  private List<String> shared() {
    return input.zones().stream()
        .flatMap(z -> z.advice().cautions().stream())
        .distinct()
        .filter(c -> input.zones().stream().allMatch(z -> z.advice().cautions().contains(c)))
        .toList();
  }

  private void row(Markup page, Table table, PageZone z) {
    page.in(
        "tr",
        () -> {
          table.header(page, "Zone", () -> name(page, z));
          table.cell(page, "Salt", () -> salt(page, z));
          table.cell(page, "What to do", () -> toDo(page, z));
          table.cell(page, "Why", () -> page.text(z.advice().why()));
          table.cell(page, "What it takes", () -> page.text(z.advice().cost()));
          table.cell(page, "How sure", () -> sure(page, z));
        },
        "id",
        anchor(input, z),
        "role",
        "row");
  }

  private void name(Markup page, PageZone z) {
    Swatch.write(page, colour(z), "class " + z.zone().label());
    page.name(z.zone().name());
    page.line("span", figures.area(z.zone().areaHa()), "class", "small");
  }

  private String colour(PageZone z) {
    ClassScheme scheme = input.schemes().get(z.zone().field());
    return Colours.ofClass(z.zone().klass(), scheme.labels().size());
  }

  private void salt(Markup page, PageZone z) {
    page.text(Figures.ece(z.low(), z.mean(), z.high()));
    z.yieldPct()
        .ifPresent(
            y -> page.line("span", "yield about " + Figures.percent(y / 100), "class", "small"));
  }

  private void toDo(Markup page, PageZone z) {
    if (z.advice().isDraft()) {
      page.line("strong", "Draft: do not act on it yet. ", "class", "draft");
    }
    page.line("strong", z.advice().headline());
  }

  private void sure(Markup page, PageZone z) {
    page.text(z.advice().sure());
    if (z.advice().isDraft()) {
      page.text(" To lift the mark: " + String.join("; ", z.advice().draft()) + ".");
    }
  }

  private void details(Markup page, PageZone z) {
    ZoneAdvice advice = z.advice();
    List<String> own = advice.cautions().stream().filter(c -> !shared().contains(c)).toList();
    if (advice.steps().isEmpty() && advice.amounts().isEmpty() && own.isEmpty()) {
      return;
    }
    page.in(
        "details",
        () -> {
          page.in("summary", () -> page.name(z.zone().name()).text(": " + advice.headline()));
          page.in("ol", () -> advice.steps().forEach(s -> page.line("li", s)));
          advice.story().forEach(s -> page.line("p", s));
          amounts(page, advice);
          own.forEach(c -> page.line("p", c, "class", "caution"));
        });
  }

  private static void amounts(Markup page, ZoneAdvice advice) {
    page.in(
        "dl", () -> advice.amounts().forEach(a -> page.line("dt", a.what()).line("dd", a.value())));
  }

  /** Anchor of a zone's row: by number, as a name may hold anything. */
  static String anchor(PageInput input, PageZone zone) {
    return "zone-" + (input.zones().indexOf(zone) + 1);
  }

  /** What one reads when pointing at a zone. */
  static String tip(PageZone z) {
    return z.zone().name()
        + ": "
        + z.zone().label()
        + ", "
        + Figures.ece(z.low(), z.mean(), z.high());
  }

  static String fieldsOf(List<String> fields) {
    return fields.stream().collect(Collectors.joining(", "));
  }
}
