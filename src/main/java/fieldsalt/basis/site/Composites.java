package fieldsalt.basis.site;

import fieldsalt.basis.depth.SiteRow;
import fieldsalt.basis.layer.Conversion;
import fieldsalt.basis.layer.LayerReading;
import fieldsalt.basis.layer.Offsets;
import fieldsalt.basis.soil.Rows;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.gaussian.Normal;
import fieldsalt.quantity.DepthRange;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Composite samples of a field have no place on its map, but tell its mean ({@link
 * SiteReadings.FieldMean}). Here they are set against the mean of the sites of the same layer,
 * which they should agree with. Both means carry their errors; those that they share (one
 * laboratory and method) cancel.
 */
public final class Composites {
  /**
   * Cores in a composite that does not say how many: the fewest usual, so that it is rather trusted
   * too little. Ohio State, technical report on site-specific sampling.
   */
  static final int FEWEST_CORES = 5;

  private Composites() {}

  static boolean isOne(LayerReading reading) {
    return reading.sample().composite() && reading.sample().place().isEmpty();
  }

  /** A field's layer. */
  private record Layer(String field, DepthRange depth) {
    static Layer of(LayerReading r) {
      return new Layer(r.sample().field(), r.sample().depth());
    }
  }

  static List<Finding> findings(List<LayerReading> readings) {
    Map<Layer, List<LayerReading>> sites =
        readings.stream()
            .filter(r -> r.sample().place().isPresent())
            .collect(Collectors.groupingBy(Layer::of));
    return readings.stream()
        .filter(Composites::isOne)
        .map(r -> finding(r, sites.getOrDefault(Layer.of(r), List.of())))
        .toList();
  }

  /** Composites of another property than ECe, which only its sites tell. */
  public static List<Finding> unused(String property, List<PropertyReadings.Value> values) {
    return values.stream()
        .map(PropertyReadings.Value::sample)
        .filter(s -> s.composite() && s.place().isEmpty())
        .map(
            s ->
                Rows.finding(
                    Code.COMPOSITE_UNUSED,
                    s,
                    property + " of a composite, which has no place",
                    "not used for " + property + "; a composite informs maps of ECe only"))
        .toList();
  }

  /** A composite of a field in which no place was sampled. */
  static Finding withoutSites(SiteRow.SiteKey composite) {
    return new Finding(
        Code.COMPOSITE_UNUSED,
        new Place.Site(composite.id(), composite.field(), true),
        "a composite of a field that is not mapped",
        "not used; a map needs at least 3 places with a reading");
  }

  private static Finding finding(LayerReading composite, List<LayerReading> sites) {
    String found =
        "a reading without a place, ECe "
            + Rows.number(composite.ece())
            + " dS/m at "
            + Rows.depth(composite.sample().depth());
    String against =
        sites.isEmpty() ? "no site of that layer to compare it with" : against(composite, sites);
    return Rows.finding(
        Code.COMPOSITE,
        composite.sample(),
        found,
        "no place of its own on the map: it can only inform the field's mean; " + against);
  }

  private static String against(LayerReading composite, List<LayerReading> sites) {
    Offsets offsets = new Offsets(sites);
    double sum = sites.stream().mapToDouble(LayerReading::ece).sum();
    double[] difference = offsets.loadings(composite.shared());
    double own = composite.ownVariance() + offsets.unknownVariance(composite.shared());
    double spread = 0;
    double mean = sum / sites.size();
    for (LayerReading site : sites) {
      double weight = site.ece() / sum;
      double[] h = offsets.loadings(site.shared());
      for (int i = 0; i < h.length; i++) {
        difference[i] -= weight * h[i];
      }
      own += weight * weight * site.ownVariance();
      spread += Conversion.square(site.ece() / mean - 1);
    }
    double sampling = sites.size() < 2 ? 1 : spread / (sites.size() - 1) / sites.size();
    double shared = 0;
    for (double size : difference) {
      shared += size * size;
    }
    double sigmas =
        Math.abs(composite.lnEce() - Math.log(mean)) / Math.sqrt(own + shared + sampling);
    boolean agrees = sigmas < Normal.quantile(0.975);
    return String.format(
        Locale.ROOT,
        "the mean of %d readings of that layer is %s dS/m: %s",
        sites.size(),
        Rows.number(mean),
        agrees ? "they agree" : "they differ by more than their errors, ask which is right");
  }
}
