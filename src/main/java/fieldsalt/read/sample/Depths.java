package fieldsalt.read.sample;

import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.quantity.DepthRange;
import fieldsalt.read.file.Notes;
import fieldsalt.read.word.DepthText;
import fieldsalt.read.word.PlainText;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Settles the depths of a file: units that no cell names, single numbers, missing ones. */
final class Depths {
  private static final Set<Double> LIKE_INCHES = Set.of(6.0, 12.0, 24.0, 36.0, 48.0);

  private final ReadingRules rules;
  private final Notes notes;
  private final String unit;
  private final Map<String, TreeSet<Double>> singles = new HashMap<>();

  private Depths(List<ParsedRow> rows, ReadingRules rules, Notes notes) {
    this.rules = rules;
    this.notes = notes;
    this.unit = rules.depthUnit().orElseGet(() -> unit(rows));
    for (ParsedRow row : rows) {
      row.depth()
          .filter(d -> d.top().isEmpty())
          .map(d -> d.inCm(unit).bottom())
          .ifPresent(cm -> singles.computeIfAbsent(key(row), k -> new TreeSet<>()).add(cm));
    }
  }

  static Depths of(List<ParsedRow> rows, ReadingRules rules, Notes notes) {
    return new Depths(rows, rules, notes);
  }

  private static String key(ParsedRow row) {
    return row.id().toLowerCase(Locale.ROOT) + "\n" + row.date();
  }

  private String unit(List<ParsedRow> rows) {
    List<ParsedRow> open =
        rows.stream().filter(l -> l.depth().filter(d -> d.unit().isEmpty()).isPresent()).toList();
    if (open.isEmpty()) {
      return "cm";
    }
    String file = open.get(0).source().file();
    Set<Double> numbers = new TreeSet<>();
    for (ParsedRow row : open) {
      numbers.add(row.depth().orElseThrow().bottom());
      row.depth().orElseThrow().top().filter(t -> t > 0).ifPresent(numbers::add);
    }
    if (LIKE_INCHES.containsAll(numbers)) {
      notes.problem(
          file + " column depth",
          "depths " + shown(numbers) + " without a unit, which look like inches",
          "a unit",
          "Set depth-unit: in (or cm, ft) in the job, or write the unit into the header.");
    } else {
      notes.finding(
          Code.DEPTH_UNIT_MISSING,
          Place.file(file),
          "depths without a unit, such as " + shown(numbers),
          "taken as cm; set depth-unit in the job if that is wrong");
    }
    return "cm";
  }

  private static String shown(Set<Double> numbers) {
    return numbers.stream().limit(6).map(PlainText::number).collect(Collectors.joining(", "));
  }

  /** The layer of a row; empty, with a finding, if it is none. */
  Optional<DepthRange> range(ParsedRow row) {
    if (row.depth().isEmpty()) {
      return Optional.of(missing(row));
    }
    DepthText depth = row.depth().get();
    double bottom = depth.inCm(unit).bottom();
    double top = depth.inCm(unit).top().orElseGet(() -> above(row, bottom));
    if (top >= 0 && bottom > top && Double.isFinite(bottom)) {
      return Optional.of(new DepthRange(top, bottom));
    }
    if (!depth.equals(DepthText.UNREADABLE)) {
      notes.row(
          Code.BAD_DEPTH,
          row.source(),
          "a layer from "
              + depth.top().map(PlainText::number).orElse("?")
              + " to "
              + PlainText.number(depth.bottom())
              + " "
              + depth.unit(),
          "the row is left out; the top must be above the bottom");
    }
    return Optional.empty();
  }

  private double above(ParsedRow row, double bottomCm) {
    Double next = singles.get(key(row)).lower(bottomCm);
    notes.row(
        Code.DEPTH_SINGLE,
        row.source(),
        "a single number as depth",
        next == null
            ? "taken as the layer from the surface down to it"
            : "taken as the layer from the next shallower one of the same sample down to it");
    return next == null ? 0 : next;
  }

  private DepthRange missing(ParsedRow row) {
    if (rules.mapsEc() && !rules.depthGiven()) {
      DepthRange layer = rules.depth();
      notes.row(
          Code.DEPTH_MISSING,
          row.source(),
          "no depth",
          "taken as "
              + PlainText.number(layer.topCm())
              + "-"
              + PlainText.number(layer.bottomCm())
              + " cm; set defaults: {depth-cm: [top, bottom]} if that is wrong");
    }
    return rules.depth();
  }
}
