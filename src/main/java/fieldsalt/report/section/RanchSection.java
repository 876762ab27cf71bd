package fieldsalt.report.section;

import fieldsalt.plan.field.FieldPlan;
import fieldsalt.quantity.UnitSystem.Amount;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.report.draw.Chart;
import fieldsalt.report.draw.Colours;
import fieldsalt.report.draw.Frame;
import fieldsalt.report.draw.Furniture;
import fieldsalt.report.draw.Swatch;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.input.PageZone;
import fieldsalt.report.input.PageZoning;
import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.Markup;
import fieldsalt.report.markup.Section;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** All fields of a large ranch at a glance: a map and a table, each field leading to its page. */
public final class RanchSection implements Section {
  /** Percent of a field from which each shade is taken. */
  private static final int[] STEPS = {0, 5, 10, 25, 50};

  private final PageInput input;
  private final Figures figures;
  private final Map<String, String> pages;
  private final Map<String, List<PageZone>> zones;
  private final Map<String, PageZoning> zoning;
  private final Map<String, FieldPlan> plans;

  /**
   * @param pages address of each mapped field's page
   */
  public RanchSection(PageInput input, Figures figures, Map<String, String> pages) {
    this.input = input;
    this.figures = figures;
    this.pages = pages;
    zones = input.zones().stream().collect(Collectors.groupingBy(z -> z.zone().field()));
    zoning =
        input.zoning().stream().collect(Collectors.toMap(PageZoning::field, Function.identity()));
    plans =
        input.plan().map(p -> p.fields().stream()).stream()
            .flatMap(Function.identity())
            .collect(Collectors.toMap(FieldPlan::field, Function.identity()));
  }

  @Override
  public String id() {
    return "map";
  }

  @Override
  public String title() {
    return "The ranch, field by field";
  }

  @Override
  public void body(Markup page) {
    page.in(
        "figure",
        () -> {
          map(page);
          page.in("figcaption", () -> page.in("div", () -> legend(page), "class", "legend"));
        },
        "class",
        "wide");
    table(page);
  }

  private List<FieldBoundary> mapped() {
    return input.ranch().fields().stream().filter(f -> pages.containsKey(f.name())).toList();
  }

  private double hectares(String field) {
    return zones.getOrDefault(field, List.of()).stream().mapToDouble(z -> z.zone().areaHa()).sum();
  }

  private double above(String field) {
    return zones.getOrDefault(field, List.of()).stream()
        .mapToDouble(z -> z.chanceAbove() * z.zone().areaHa())
        .sum();
  }

  private void map(Markup page) {
    Frame frame = Frame.around(mapped().stream().map(FieldBoundary::shapeM).toList());
    String described = "All fields, darker where more of the field is likely above its limit";
    page.in(
        "svg",
        () -> {
          page.line("title", described);
          page.in("defs", () -> page.trusted(Furniture.PATTERNS));
          mapped().forEach(f -> field(page, frame, f));
          new Furniture(page, frame, figures).draw(input.ranch().projection().isLocal());
        },
        "class",
        "map",
        "viewBox",
        "0 0 " + Chart.number(frame.width()) + " " + Chart.number(frame.height()),
        "role",
        "group",
        "aria-label",
        described);
  }

  private void field(Markup page, Frame frame, FieldBoundary field) {
    String name = field.name();
    double share = above(name) / Math.max(1e-9, hectares(name));
    String tip = name + ": " + Figures.percent(share) + " likely above the limit";
    page.in(
        "a",
        () ->
            page.in(
                "path",
                () -> page.line("title", tip),
                "class",
                "zone",
                "d",
                frame.path(field.shapeM()),
                "fill",
                shade(share)),
        "href",
        pages.get(name),
        "aria-label",
        tip);
  }

  private static String shade(double share) {
    int k = 0;
    while (k + 1 < STEPS.length && 100 * share >= STEPS[k + 1]) {
      k++;
    }
    return Colours.ofClass(k, STEPS.length);
  }

  private static void legend(Markup page) {
    page.text("Share of the field that is likely above its limit: ");
    for (int k = 0; k < STEPS.length; k++) {
      int from = STEPS[k];
      String to = k + 1 < STEPS.length ? "below " + STEPS[k + 1] : from + " and more";
      page.in(
          "span",
          () -> {
            Swatch.write(page, shade(from / 100.0), "shade of");
            page.text(to + Figures.GAP + "%");
          });
    }
  }

  /** Numbers are sorted by {@code data-value}. */
  private void table(Markup page) {
    List<String> columns =
        List.of(
            "Field",
            "Area",
            "Likely above the limit",
            "Gypsum by the machine's rates",
            "Water through the soil",
            "Class line uncertain",
            "Plan");
    page.in(
        "table",
        () -> {
          page.line("caption", "Fields; a press on a heading sorts by it");
          page.in(
              "thead",
              () ->
                  page.in(
                      "tr",
                      () ->
                          columns.forEach(
                              c ->
                                  page.in(
                                      "th",
                                      () -> page.line("button", c, "type", "button"),
                                      "scope",
                                      "col",
                                      "role",
                                      "columnheader")),
                      "role",
                      "row"),
              "role",
              "rowgroup");
          page.in(
              "tbody",
              () -> mapped().forEach(f -> row(page, columns, f.name())),
              "role",
              "rowgroup");
        },
        "role",
        "table",
        "class",
        "sortable");
  }

  private void row(Markup page, List<String> columns, String field) {
    Optional<FieldPlan> plan = Optional.ofNullable(plans.get(field));
    double tonnes = plan.map(FieldPlan::plannedT).orElse(0.0);
    double water = plan.map(FieldPlan::plannedM3).orElse(0.0);
    double uncertain =
        Optional.ofNullable(zoning.get(field)).map(PageZoning::uncertainHa).orElse(0.0);
    boolean draft = plan.map(p -> p.draft().isDraft()).orElse(false);
    page.in(
        "tr",
        () -> {
          page.in(
              "th",
              () -> page.in("a", () -> page.name(field), "href", pages.get(field)),
              "scope",
              "row",
              "role",
              "rowheader",
              "data-column",
              columns.get(0));
          double ha = hectares(field);
          cell(page, columns.get(1), ha, figures.area(ha));
          cell(page, columns.get(2), above(field), figures.amount(above(field), Amount.AREA));
          cell(page, columns.get(3), tonnes, some(tonnes, Amount.MASS));
          cell(page, columns.get(4), water, some(water, Amount.WATER_VOLUME));
          cell(page, columns.get(5), uncertain, figures.amount(uncertain, Amount.AREA));
          cell(page, columns.get(6), draft ? 1 : 0, draft ? "draft" : "ready");
        },
        "role",
        "row");
  }

  private String some(double inside, Amount amount) {
    return inside > 0 ? figures.amount(inside, amount) : "none";
  }

  private static void cell(Markup page, String column, double value, String text) {
    page.in(
        "td",
        () -> page.line("div", text),
        "role",
        "cell",
        "data-column",
        column,
        "data-value",
        String.valueOf((float) value));
  }
}
