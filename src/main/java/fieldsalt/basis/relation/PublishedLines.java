package fieldsalt.basis.relation;

import fieldsalt.basis.soil.SoilGroup;
import fieldsalt.facts.PublishedLine;
import fieldsalt.read.sample.Soil;
import java.util.List;
import java.util.Optional;

/**
 * A relation that is one straight line a texture: ECe = slope EC + intercept, dS/m at 25 °C, with
 * the coefficients of {@code ece_relations.csv}. A line with a negative intercept is left where it
 * falls below {@code floor x EC}, so that ECe stays above 0 and rises with EC; one with a positive
 * intercept where it would more than double the slope. Both are warned of, as is an EC above the
 * fitted soils. Refuses a texture that the paper has no line for.
 */
abstract class PublishedLines implements EceRelation {
  private final String name;
  private final String citation;
  private final String domain;
  private final List<PublishedLine> lines;

  PublishedLines(String name, String citation, String domain) {
    this.name = name;
    this.citation = citation;
    this.domain = domain;
    this.lines = PublishedLine.of(name);
  }

  @Override
  public final String name() {
    return name;
  }

  @Override
  public final String citation() {
    return citation;
  }

  @Override
  public final String domain() {
    return domain;
  }

  @Override
  public final String confidence() {
    return lines.get(0).confidence();
  }

  @Override
  public final String region() {
    return lines.get(0).region();
  }

  @Override
  public final boolean takes(MethodKey method) {
    return lines.stream().anyMatch(line -> MethodKey.of(line.method(), line.kind()).equals(method));
  }

  @Override
  public final Outcome convert(double ecDsM, Soil soil) {
    Optional<PublishedLine> line = line(soil);
    return line.isPresent()
        ? along(line.get(), ecDsM)
        : new Outcome.Refusal("has no line for " + texture(soil));
  }

  private Optional<PublishedLine> line(Soil soil) {
    List<String> wanted = List.of(soil.texture().name(), SoilGroup.of(soil).name(), "ANY");
    return wanted.stream()
        .flatMap(texture -> lines.stream().filter(line -> line.texture().equals(texture)))
        .findFirst();
  }

  private static String texture(Soil soil) {
    String word = soil.texture().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
    return word.equals("unknown") ? "a soil of unknown texture" : word;
  }

  private static Outcome along(PublishedLine line, double ecDsM) {
    double straight = line.slope() * ecDsM + line.intercept();
    double lowest = line.floor().orElse(0) * ecDsM;
    double highest = 2 * line.slope() * ecDsM;
    Outcome.Ece ece = Outcome.ece(Math.min(Math.max(straight, lowest), highest), line.sdLn());
    if (straight < lowest || straight > highest) {
      ece = ece.warn("below the EC that its line was made for; a multiplier was used there");
    }
    return ecDsM > line.ecMax().orElse(Double.POSITIVE_INFINITY)
        ? ece.warn("EC above the " + line.ecMax().getAsDouble() + " dS/m that it was fitted to")
        : ece;
  }
}
