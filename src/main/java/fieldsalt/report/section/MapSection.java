package fieldsalt.report.section;

import fieldsalt.classes.ClassScheme;
import fieldsalt.handover.input.Palette;
import fieldsalt.quantity.UnitSystem.Amount;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.report.draw.Colours;
import fieldsalt.report.draw.SurfacePicture;
import fieldsalt.report.draw.Swatch;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.input.PageZoning;
import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.Markup;
import fieldsalt.report.markup.Section;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;

/** The map: zones, sites, legend with units and scheme, scale, north; and the surface behind. */
public final class MapSection implements Section {
  private final PageInput input;
  private final Figures figures;

  public MapSection(PageInput input, Figures figures) {
    this.input = input;
    this.figures = figures;
  }

  @Override
  public String id() {
    return "map";
  }

  @Override
  public String title() {
    return "The map";
  }

  @Override
  public void body(Markup page) {
    List<List<FieldBoundary>> groups = Neighbourhoods.of(mapped());
    page.in(
        "figure",
        () -> {
          groups.forEach(g -> new MapDrawing(input, figures, page, g).zones());
          page.in("figcaption", () -> legend(page));
        },
        "class",
        "wide");
    if (!input.isFlat()) {
      surface(page, groups);
    }
  }

  private List<FieldBoundary> mapped() {
    return input.ranch().fields().stream()
        .filter(f -> input.schemes().containsKey(f.name()))
        .toList();
  }

  private void legend(Markup page) {
    fieldsByScheme().forEach((scheme, fields) -> scheme(page, scheme, fields));
    page.in("div", () -> signs(page), "class", "legend");
  }

  private Map<ClassScheme, List<String>> fieldsByScheme() {
    Map<ClassScheme, List<String>> byScheme = new LinkedHashMap<>();
    for (FieldBoundary f : mapped()) {
      byScheme.computeIfAbsent(input.schemes().get(f.name()), s -> new ArrayList<>()).add(f.name());
    }
    return byScheme;
  }

  private void scheme(Markup page, ClassScheme scheme, List<String> fields) {
    page.in(
        "div",
        () -> {
          page.in("strong", () -> page.text(scheme.name()));
          page.in("span", () -> page.text("field ").name(String.join(", ", fields)));
          for (int k = 0; k < scheme.labels().size(); k++) {
            entry(page, scheme, k);
          }
        },
        "class",
        "legend");
  }

  private void entry(Markup page, ClassScheme scheme, int k) {
    page.in(
        "span",
        () -> {
          Swatch.write(page, Colours.ofClass(k, scheme.labels().size()), "shade of");
          String label = scheme.labels().get(k);
          page.text(scheme.labelsAreLimits() ? label : label + ": " + limits(scheme, k));
        });
  }

  private String limits(ClassScheme scheme, int k) {
    List<Double> b = scheme.breaks();
    if (b.isEmpty()) {
      return "any value";
    }
    if (k == 0) {
      return figures.property() + " below " + figures.value(b.get(0));
    }
    return k == b.size()
        ? figures.value(b.get(k - 1)) + " and above"
        : Figures.twoFigures(b.get(k - 1)) + " to " + figures.value(b.get(k));
  }

  private void signs(Markup page) {
    sign(
        page,
        "<circle cx=\"10\" cy=\"8\" r=\"4.5\" class=\"site paste\"/>",
        "site with a saturated paste");
    sign(
        page,
        "<circle cx=\"10\" cy=\"8\" r=\"4.5\" class=\"site\"/>",
        "site with a converted reading");
    sign(
        page,
        "<rect width=\"20\" height=\"16\" fill=\"url(#undecided)\" class=\"hatch\"/>",
        "hatched: nobody can say yet whether "
            + figures.property()
            + " is above "
            + limitWords()
            + " (chance 20 to 80 %)");
    if (!input.surface().report().details().doubtful().isEmpty()) {
      sign(
          page,
          "<circle cx=\"10\" cy=\"8\" r=\"6\" class=\"doubtful\"/>",
          "a ring: a doubtful reading, misread or a small spot of its own; it counts half");
    }
    sodicity(page);
    if (!input.surface().next().isEmpty()) {
      sign(page, "<path d=\"M10 2l6 11h-12Z\" class=\"next\"/>", "measure next");
    }
    if (input.surface().maps().stream().anyMatch(m -> !m.beyond().isEmpty())) {
      sign(
          page,
          "<rect width=\"20\" height=\"16\" fill=\"url(#beyond)\" class=\"hatch\"/>",
          "hatched the other way: the survey or raster has a value that no sampled place has, or"
              + " none: believe it less");
    }
  }

  /** What dots mean, field by field where fields differ, and where zones follow salinity only. */
  private void sodicity(Markup page) {
    if (!input.isBySodicity()) {
      return;
    }
    Map<Optional<String>, List<String>> fields = new LinkedHashMap<>();
    for (PageZoning z : input.zoning()) {
      Optional<String> dots = z.sodicity().map(this::dotted);
      fields.computeIfAbsent(dots, m -> new ArrayList<>()).add(z.field());
    }
    fields.forEach((dots, names) -> sodicity(page, dots, fields.size() == 1 ? List.of() : names));
  }

  private static void sodicity(Markup page, Optional<String> dots, List<String> fields) {
    String means = dots.orElse("zones by salinity only, sodium unknown");
    sign(
        page,
        dots.isPresent()
            ? "<rect width=\"20\" height=\"16\" fill=\"url(#sodic)\" class=\"hatch\"/>"
            : "",
        fields.isEmpty() ? means : means + " (field " + String.join(", ", fields) + ")");
  }

  private String dotted(PageZoning.BySodicity s) {
    double depth = figures.system().of(s.depthCm(), Amount.SOIL_DEPTH);
    return "dotted: sodic, "
        + s.property()
        + " of "
        + Figures.twoFigures(s.limit())
        + (s.unit().isEmpty() ? "" : Figures.GAP + s.unit())
        + " and above in the top "
        + Figures.twoFigures(depth)
        + Figures.GAP
        + figures.unit(Amount.SOIL_DEPTH);
  }

  private String limitWords() {
    boolean allCrops =
        input.schemes().keySet().stream()
            .allMatch(f -> input.settings().cropByField().containsKey(f));
    return allCrops ? "what the crop stands without loss" : "the field's limit";
  }

  private static void sign(Markup page, String drawn, String means) {
    page.in(
        "span",
        () -> {
          page.in(
              "svg",
              () -> page.trusted(drawn),
              "class",
              "swatch",
              "viewBox",
              "0 0 20 16",
              "aria-hidden",
              "true");
          page.text(means);
        });
  }

  private void surface(Markup page, List<List<FieldBoundary>> groups) {
    if (input.surface().maps().isEmpty()) {
      return;
    }
    SurfacePicture picture = SurfacePicture.scaledTo(input.surface().maps());
    page.line("h3", "The surface behind the zones");
    page.in(
        "figure",
        () -> {
          groups.forEach(g -> new MapDrawing(input, figures, page, g).surface(picture));
          page.in("figcaption", () -> ramp(page, picture));
        },
        "class",
        "wide");
  }

  private void ramp(Markup page, SurfacePicture picture) {
    page.text("Median " + figures.property() + (figures.isEce() ? " of the root zone: " : ": "));
    page.text(figures.value(picture.least()));
    page.in(
        "svg",
        () -> {
          for (int i = 0; i < 40; i++) {
            page.empty(
                "rect",
                "x",
                String.valueOf(5 * i),
                "width",
                "5.5",
                "height",
                "16",
                "fill",
                Palette.hex(i / 39.0));
          }
        },
        "class",
        "ramp",
        "viewBox",
        "0 0 200 16",
        "role",
        "img",
        "aria-label",
        "from pale to dark");
    page.text(figures.value(picture.most()) + ". Half of the soil at a place may be saltier.");
  }

  /** Fields that lie near enough to be drawn in one frame. */
  static final class Neighbourhoods {
    private static final double LONGEST_GAP = 2.5;

    private Neighbourhoods() {}

    /** All in one frame, or each in its own where the frame would be mostly empty. */
    static List<List<FieldBoundary>> of(List<FieldBoundary> fields) {
      Envelope box = new Envelope();
      double largest = 0;
      for (FieldBoundary field : fields) {
        Envelope own = field.shapeM().getEnvelopeInternal();
        box.expandToInclude(own);
        largest = Math.max(largest, Math.max(own.getWidth(), own.getHeight()));
      }
      boolean near = Math.max(box.getWidth(), box.getHeight()) <= LONGEST_GAP * largest;
      return near ? List.of(fields) : fields.stream().map(List::of).toList();
    }
  }
}
