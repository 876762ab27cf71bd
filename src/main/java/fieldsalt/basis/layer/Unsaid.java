package fieldsalt.basis.layer;

import fieldsalt.basis.relation.DefaultMultiplier;
import fieldsalt.basis.soil.SoilGroup;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.quantity.TextureGroup;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;

/** What the sheet does not say and would make the errors smaller, once a method. */
final class Unsaid {
  private Unsaid() {}

  static List<Finding> findings(List<LayerReading> readings) {
    List<Finding> findings = new ArrayList<>();
    count(readings, Unsaid::withoutTexture)
        .forEach(
            (method, rows) ->
                findings.add(
                    new Finding(
                        Code.TEXTURE_MISSING,
                        new Place.Source(method),
                        rows.size() + " readings without texture, clay or SP",
                        error(rows)
                            + "; give texture, clay_pct or sp_pct, for the field if not by row")));
    count(readings, Unsaid::withoutKind)
        .forEach(
            (method, rows) ->
                findings.add(
                    new Finding(
                        Code.KIND_NOT_SAID,
                        new Place.Source(method),
                        rows.size() + " readings that may be of an extract or of the slurry",
                        error(rows) + "; ask the laboratory and say reading: extract or slurry")));
    return findings;
  }

  private static boolean withoutTexture(LayerReading r) {
    return r.relation() instanceof DefaultMultiplier
        && SoilGroup.of(r.sample().soil()) == TextureGroup.UNKNOWN;
  }

  private static boolean withoutKind(LayerReading r) {
    return r.method().kind() == ReadingKind.UNKNOWN && r.relation() instanceof DefaultMultiplier;
  }

  private static Map<String, List<LayerReading>> count(
      List<LayerReading> readings, Predicate<LayerReading> which) {
    Map<String, List<LayerReading>> rows = new TreeMap<>();
    readings.stream()
        .filter(which)
        .forEach(r -> rows.computeIfAbsent(r.method().label(), m -> new ArrayList<>()).add(r));
    return rows;
  }

  private static String error(List<LayerReading> rows) {
    double variance =
        rows.stream()
            .mapToDouble(
                r -> r.ownVariance() + r.shared().stream().mapToDouble(t -> t.sd() * t.sd()).sum())
            .average()
            .orElseThrow();
    return String.format(
        Locale.ROOT, "kept, each with an error of %.0f %%", 100 * Math.expm1(Math.sqrt(variance)));
  }
}
