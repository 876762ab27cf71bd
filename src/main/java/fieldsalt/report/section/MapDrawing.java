package fieldsalt.report.section;

import fieldsalt.basis.site.SiteReadings.Site;
import fieldsalt.classes.ClassScheme;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.report.draw.Chart;
import fieldsalt.report.draw.Colours;
import fieldsalt.report.draw.Frame;
import fieldsalt.report.draw.Furniture;
import fieldsalt.report.draw.Hatching;
import fieldsalt.report.draw.Labels;
import fieldsalt.report.draw.SurfacePicture;
import fieldsalt.report.draw.SurveyPicture;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.input.PageSodicity;
import fieldsalt.report.input.PageSurface;
import fieldsalt.report.input.PageZone;
import fieldsalt.report.markup.Figures;
import fieldsalt.report.markup.Markup;
import fieldsalt.surface.fit.SurfaceDetails;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.next.Proposal;
import fieldsalt.surface.site.Grid;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Geometry;

/** One map as inline SVG: fields that lie near one another, drawn in one frame. */
final class MapDrawing {
  private final PageInput input;
  private final Markup page;
  private final List<FieldBoundary> fields;
  private final Set<String> names;
  private final Figures figures;
  private final Frame frame;
  private final Furniture furniture;

  MapDrawing(PageInput input, Figures figures, Markup page, List<FieldBoundary> fields) {
    this.input = input;
    this.page = page;
    this.figures = figures;
    this.fields = List.copyOf(fields);
    this.names = fields.stream().map(FieldBoundary::name).collect(Collectors.toSet());
    this.frame = Frame.around(fields.stream().map(FieldBoundary::shapeM).toList());
    this.furniture = new Furniture(page, frame, figures);
  }

  /** The zones in their classes, hatched where undecided, with sites and names. */
  void zones() {
    svg(
        "Zones of " + said() + " in their classes",
        () -> {
          input.zones().stream().filter(z -> isHere(z.zone().field())).forEach(this::zone);
          input.surface().maps().forEach(this::undecided);
          outlines();
          sites();
          next();
          labels();
          furniture.draw(input.ranch().projection().isLocal());
        });
  }

  /** The median surface behind the zones. */
  void surface(SurfacePicture picture) {
    svg(
        "Median " + figures.property() + " of " + said(),
        () -> {
          page.in("clipPath", this::fieldShapes, "id", clip("surface"));
          input.surface().maps().stream()
              .filter(this::touches)
              .forEach(m -> image(picture, m, clip("surface")));
          outlines();
          sites();
          furniture.draw(input.ranch().projection().isLocal());
        });
  }

  /** The survey of apparent conductivity, as means of small squares. */
  void survey(SurveyPicture survey) {
    svg(
        "Apparent conductivity of " + said(),
        () -> {
          page.in("clipPath", this::fieldShapes, "id", clip("survey"));
          image(survey.picture(), survey.map(), clip("survey"));
          outlines();
          furniture.draw(input.ranch().projection().isLocal());
        });
  }

  private String said() {
    return (fields.size() == 1 ? "field " : "fields ")
        + fields.stream().map(FieldBoundary::name).collect(Collectors.joining(", "));
  }

  private boolean isHere(String field) {
    return names.contains(field);
  }

  private boolean touches(SurfaceMap map) {
    return map.fields().stream().anyMatch(this::isHere);
  }

  private void svg(String described, Runnable content) {
    page.in(
        "svg",
        () -> {
          page.line("title", described);
          page.in("defs", () -> page.trusted(Furniture.PATTERNS));
          content.run();
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

  private void zone(PageZone z) {
    ClassScheme scheme = input.schemes().get(z.zone().field());
    page.in(
        "a",
        () ->
            page.in(
                "path",
                () -> page.line("title", tip(z)),
                "class",
                "zone",
                "d",
                frame.path(z.zone().shapeM()),
                "fill",
                Colours.ofClass(z.zone().klass(), scheme.labels().size())),
        "href",
        "#" + ZonesSection.anchor(input, z),
        "aria-label",
        tip(z));
    if (z.sodicity().filter(PageSodicity::sodic).isPresent()) {
      hatch(frame.path(z.zone().shapeM()), "sodic");
    }
  }

  /** What one reads when pointing at a zone. */
  private String tip(PageZone z) {
    return z.zone().name()
        + ": "
        + z.zone().label()
        + ", "
        + figures.value(z.low(), z.mean(), z.high())
        + z.sodicity().map(s -> ", " + ZoneTable.sodium(s)).orElse("");
  }

  private void undecided(SurfaceMap map) {
    if (touches(map)) {
      hatch(Hatching.undecided(frame, map), "undecided");
      hatch(Hatching.beyond(frame, map), "beyond");
    }
  }

  private void hatch(String path, String pattern) {
    if (!path.isEmpty()) {
      page.empty("path", "d", path, "fill", "url(#" + pattern + ")", "class", "hatch");
    }
  }

  /** The name of this map's clip, by its first field's place among all fields. */
  private String clip(String kind) {
    return kind + "-" + input.ranch().fields().indexOf(fields.get(0));
  }

  private void fieldShapes() {
    fields.forEach(f -> page.empty("path", "d", frame.path(f.shapeM()), "clip-rule", "evenodd"));
  }

  private void image(SurfacePicture picture, SurfaceMap map, String clip) {
    Grid grid = map.grid();
    page.empty(
        "image",
        "href",
        picture.dataAddress(map),
        "x",
        Chart.number(frame.x(grid.westM())),
        "y",
        Chart.number(frame.y(grid.northM())),
        "width",
        Chart.number(grid.columns() * grid.cellM() * frame.perM()),
        "height",
        Chart.number(grid.rows() * grid.cellM() * frame.perM()),
        "preserveAspectRatio",
        "none",
        "clip-path",
        "url(#" + clip + ")");
  }

  private void outlines() {
    for (FieldBoundary field : fields) {
      page.empty("path", "d", frame.path(field.shapeM()), "class", "outline");
    }
  }

  private void sites() {
    Set<Integer> pastes =
        input.sites().rows().stream()
            .filter(r -> r.paste())
            .map(r -> r.site())
            .collect(Collectors.toSet());
    List<Site> sites = input.sites().sites();
    for (int i = 0; i < sites.size(); i++) {
      if (isHere(sites.get(i).field())) {
        site(sites.get(i), pastes.contains(i));
      }
    }
    input.surface().report().details().doubtful().stream()
        .filter(d -> isHere(d.field()) && !d.supported())
        .forEach(this::doubtful);
  }

  /** A ring around a site in doubt. */
  private void doubtful(SurfaceDetails.Doubtful site) {
    String tip =
        site.siteId()
            + ": reads "
            + figures.value(site.value())
            + ", its neighbours suggest "
            + figures.value(site.low(), site.suggested(), site.high());
    page.in(
        "circle",
        () -> page.line("title", tip),
        "cx",
        Chart.number(frame.x(site.place().xM())),
        "cy",
        Chart.number(frame.y(site.place().yM())),
        "r",
        "7",
        "class",
        "doubtful");
  }

  private void site(Site site, boolean paste) {
    String tip = site.id() + (paste ? ", saturated paste" : ", converted reading");
    page.in(
        "circle",
        () -> page.line("title", tip),
        "cx",
        Chart.number(frame.x(site.place().xM())),
        "cy",
        Chart.number(frame.y(site.place().yM())),
        "r",
        "3.6",
        "class",
        paste ? "site paste" : "site");
  }

  /** Places to measure next: triangles with their order; a reading in doubt has its ring. */
  private void next() {
    List<PageSurface.NextMeasurement> next = input.surface().next();
    for (int i = 0; i < next.size(); i++) {
      boolean ring = next.get(i).kind() == Proposal.Kind.DOUBTFUL_AGAIN;
      if (!ring && isHere(next.get(i).field())) {
        triangle(next.get(i), i + 1);
      }
    }
  }

  private void triangle(PageSurface.NextMeasurement n, int order) {
    double x = frame.x(n.place().xM());
    double y = frame.y(n.place().yM());
    page.in(
        "path",
        () -> page.line("title", "Measure next, " + order + ": " + n.what()),
        "d",
        "M" + Chart.number(x) + " " + Chart.number(y - 6.5) + "l6 11h-12Z",
        "class",
        "next");
  }

  private void labels() {
    Labels labels = new Labels(page, frame);
    input.zones().stream()
        .filter(z -> isHere(z.zone().field()))
        .sorted(java.util.Comparator.comparingDouble((PageZone z) -> -z.zone().areaHa()))
        .forEach(z -> labels.zone(z.zone().name(), z.zone().shapeM()));
    for (FieldBoundary field : fields) {
      Geometry shape = field.shapeM();
      labels.field(field.name(), shape);
    }
  }
}
