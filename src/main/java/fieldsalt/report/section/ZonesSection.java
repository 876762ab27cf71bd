package fieldsalt.report.section;

import fieldsalt.plan.field.FieldPlan;
import fieldsalt.plan.word.PlanWords;
import fieldsalt.plan.word.Sentence;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.input.PageZone;
import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.Markup;
import fieldsalt.report.markup.Section;
import java.util.List;
import java.util.Optional;

/** Field by field: what holds for the whole field, then for each zone what to do, in one table. */
public final class ZonesSection implements Section {
  private final PageInput input;
  private final Figures figures;

  public ZonesSection(PageInput input, Figures figures) {
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
    List<String> everywhere = everywhere();
    box(page, "Before any money is spent", everywhere);
    for (String field : input.schemes().keySet()) {
      field(page, field, everywhere);
    }
  }

  private void field(Markup page, String field, List<String> everywhere) {
    List<PageZone> zones =
        input.zones().stream().filter(z -> z.zone().field().equals(field)).toList();
    heading(page, field);
    plan(field).ifPresent(p -> texts(words(p).of(p)).forEach(s -> page.line("p", s)));
    box(page, "Caution", except(cautions(field), everywhere));
    List<String> draft = commonDraft(zones);
    box(page, "Draft: do not act on it yet. What would lift the mark", draft);
    new ZoneTable(input, figures, draft).write(page, zones);
    plan(field).ifPresent(p -> new YearsTable(p).write(page));
  }

  private void heading(Markup page, String field) {
    page.in(
        "h3",
        () -> {
          page.textWithName("Field %s", field);
          Optional.ofNullable(input.settings().cropByField().get(field))
              .ifPresent(crop -> page.text(": " + crop));
          Optional.ofNullable(input.settings().depthWords().get(field))
              .filter(depth -> figures.isEce())
              .ifPresent(depth -> page.text(", ECe of " + depth + " of soil"));
        });
  }

  private Optional<FieldPlan> plan(String field) {
    return input.plan().stream()
        .flatMap(p -> p.fields().stream())
        .filter(p -> p.field().equals(field))
        .findFirst();
  }

  private static PlanWords words(FieldPlan plan) {
    return new PlanWords(plan.ground().settings());
  }

  private List<String> texts(List<Sentence> sentences) {
    return sentences.stream().map(s -> Figures.grouped(s.text(figures.system()))).toList();
  }

  /** Cautions of a field: its own, and those that all of its zones carry. */
  private List<String> cautions(String field) {
    return plan(field).map(p -> texts(words(p).cautions(p))).orElse(List.of());
  }

  /** What every field carries is told once, above all. */
  private List<String> everywhere() {
    List<String> fields = List.copyOf(input.schemes().keySet());
    return fields.isEmpty()
        ? List.of()
        : cautions(fields.get(0)).stream()
            .filter(c -> fields.stream().allMatch(f -> cautions(f).contains(c)))
            .toList();
  }

  private static List<String> except(List<String> all, List<String> told) {
    return all.stream().filter(c -> !told.contains(c)).toList();
  }

  /** What makes every zone of the field a draft; empty if one of them is none. */
  private static List<String> commonDraft(List<PageZone> zones) {
    return zones.isEmpty()
        ? List.of()
        : zones.get(0).advice().draft().stream()
            .filter(d -> zones.stream().allMatch(z -> z.advice().draft().contains(d)))
            .toList();
  }

  private static void box(Markup page, String heading, List<String> lines) {
    if (lines.isEmpty()) {
      return;
    }
    page.in(
        "div",
        () -> {
          page.line("strong", heading);
          page.in("ul", () -> lines.forEach(c -> page.line("li", c)));
        },
        "class",
        "caution",
        "role",
        "note");
  }

  /** Anchor of a zone's row: by number, as a name may hold anything. */
  static String anchor(PageInput input, PageZone zone) {
    return "zone-" + (input.zones().indexOf(zone) + 1);
  }
}
