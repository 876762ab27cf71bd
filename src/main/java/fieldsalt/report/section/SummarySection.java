package fieldsalt.report.section;

import fieldsalt.read.field.FieldBoundary;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.input.PageSurface;
import fieldsalt.report.input.PageZone;
import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.Markup;
import fieldsalt.report.markup.Section;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Three sentences for the grower: how much salt and where, what to do, how sure. */
public final class SummarySection implements Section {
  private final PageInput input;
  private final Figures figures;

  public SummarySection(PageInput input, Figures figures) {
    this.input = input;
    this.figures = figures;
  }

  @Override
  public String id() {
    return "summary";
  }

  @Override
  public String title() {
    return "In short";
  }

  @Override
  public void body(Markup page) {
    page.in(
        "ol",
        () -> {
          page.in("li", () -> howMuch(page));
          if (input.plan().isPresent() || figures.isEce()) {
            page.in("li", () -> whatToDo(page));
          }
          page.line("li", howSure());
        },
        "class",
        "summary");
    drafts(page);
    leftOut(page);
  }

  private void howMuch(Markup page) {
    double above =
        input.zones().stream().mapToDouble(z -> z.chanceAbove() * z.zone().areaHa()).sum();
    page.text(
        "About "
            + figures.amount(above, fieldsalt.quantity.UnitSystem.Amount.AREA)
            + " of "
            + figures.area(input.areaHa())
            + limitPassed());
    worst().ifPresent(z -> worstZone(page, z));
    page.text(".");
  }

  private String limitPassed() {
    if (!figures.isEce()) {
      return " are likely above the limit in " + figures.property();
    }
    return everyFieldHasCrop()
        ? " are likely saltier than the crop stands without loss"
        : " are likely saltier than the field's limit";
  }

  private boolean everyFieldHasCrop() {
    return input.schemes().keySet().stream()
        .allMatch(f -> input.settings().cropByField().containsKey(f));
  }

  private Optional<PageZone> worst() {
    Comparator<PageZone> byLoss =
        Comparator.comparingDouble(z -> z.yieldPct().orElse(100 - z.mean()));
    return input.isFlat() ? Optional.empty() : input.zones().stream().min(byLoss);
  }

  private void worstZone(Markup page, PageZone zone) {
    page.textWithName(
        "; the worst is zone %s with " + figures.value(zone.mean()), zone.zone().name());
    if (zone.yieldPct().isPresent()) {
      page.text(
          ", where about "
              + Figures.percent(zone.yieldPct().getAsDouble() / 100)
              + " of the yield on good ground can be expected");
    }
  }

  private void whatToDo(Markup page) {
    Map<String, Double> hectares = new LinkedHashMap<>();
    for (PageZone z : input.zones()) {
      hectares.merge(z.advice().headline(), z.zone().areaHa(), Double::sum);
    }
    String list =
        hectares.entrySet().stream()
            .sorted(Map.Entry.<String, Double>comparingByValue().reversed())
            .map(e -> lowerFirst(e.getKey()) + " on " + figures.area(e.getValue()))
            .collect(Collectors.joining("; "));
    boolean alike = input.isFlat() && !input.followsSodiumAlone();
    page.text((alike ? "Treat each field alike: " : "What to do: ") + list + ".");
  }

  private static String lowerFirst(String text) {
    boolean word = text.length() > 1 && !Character.isUpperCase(text.charAt(1));
    return word
        ? text.substring(0, 1).toLowerCase(java.util.Locale.ROOT) + text.substring(1)
        : text;
  }

  private String howSure() {
    return Words.trust(input) + firstNext();
  }

  private String firstNext() {
    List<PageSurface.NextMeasurement> next = input.surface().next();
    return next.isEmpty()
        ? ""
        : " Most would be learnt from: " + lowerFirst(next.get(0).what()) + ".";
  }

  private void leftOut(Markup page) {
    List<FieldBoundary> fields =
        input.ranch().fields().stream()
            .filter(f -> !input.schemes().containsKey(f.name()))
            .toList();
    if (!fields.isEmpty()) {
      String names =
          fields.stream()
              .map(f -> f.name() + " (" + figures.area(f.shapeM().getArea() / 10_000) + ")")
              .collect(Collectors.joining(", "));
      page.in(
          "p",
          () -> page.textWithName("Not mapped: %s. The findings say why.", names),
          "class",
          "caution");
    }
  }

  private void drafts(Markup page) {
    long drafts = input.zones().stream().filter(z -> z.advice().isDraft()).count();
    if (drafts > 0) {
      page.line(
          "p",
          "Draft: do not act yet on the plan of "
              + Figures.count(drafts, "zone")
              + "; what would lift the mark stands beside each.",
          "class",
          "caution");
    }
  }
}
