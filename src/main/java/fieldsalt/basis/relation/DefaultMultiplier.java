package fieldsalt.basis.relation;

import fieldsalt.basis.soil.SaturationPercentage;
import fieldsalt.basis.soil.SoilGroup;
import fieldsalt.facts.Multipliers;
import fieldsalt.facts.Multipliers.Multiplier;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.quantity.Texture;
import fieldsalt.quantity.TextureGroup;
import fieldsalt.read.sample.Soil;
import java.util.List;
import java.util.Optional;

/**
 * The default: a multiplier for every method, always above 0. At 1:5 by saturation percentage
 * (Slavich &amp; Petterson 1993), else clay (the same formula with SP = 0.86 clay + 14.5), else
 * texture, else 7.5. At other ratios by texture group. The table {@code
 * ece_default_multipliers.csv} has every value, its error and what it rests on; a slurry at 1:2 or
 * 1:2.5, or one of which nobody said whether it was filtered, takes the extract's factor with 0.15
 * more error. In a sulphate-prairie region the table {@code ece_prairie_multipliers.csv} is asked
 * first.
 */
public final class DefaultMultiplier implements EceRelation {
  private static final Multipliers DEFAULTS = Multipliers.defaults();
  private static final Multipliers PRAIRIE = Multipliers.prairie();
  private static final double SLURRY_MORE = 0.15;

  private final MethodKey method;
  private final boolean prairie;

  public DefaultMultiplier(MethodKey method, boolean prairie) {
    this.method = method;
    this.prairie = prairie;
  }

  @Override
  public String name() {
    return prairie ? "DefaultMultiplierPrairie" : "DefaultMultiplier";
  }

  @Override
  public String citation() {
    return switch (method.method()) {
      case ONE_TO_FIVE ->
          "default multiplier at 1:5, after Slavich & Petterson 1993 and Rayment & Lyons 2011";
      case ONE_TO_ONE ->
          method.kind() == ReadingKind.SLURRY
              ? "default multiplier for a 1:1 slurry, after Hogg & Henry 1984 at ECe 4"
              : "default multiplier at 1:1, after Sonmez et al. 2008 and Zhang et al. 2005";
      case ONE_TO_TWO ->
          prairie
              ? "default multiplier at 1:2 for sulphate prairie, after Hogg & Henry 1984 at ECe 4"
              : "default multiplier at 1:2, interpolated between 1:1 and 1:2.5";
      case ONE_TO_TWO_AND_HALF -> "default multiplier at 1:2.5, geometric mean of published slopes";
      case PASTE -> throw new IllegalStateException("the paste needs no multiplier");
    };
  }

  @Override
  public String confidence() {
    return "D";
  }

  @Override
  public String domain() {
    return prairie ? "sulphate soils of the northern prairies" : "any soil";
  }

  @Override
  public boolean takes(MethodKey other) {
    return other.equals(method);
  }

  @Override
  public Outcome convert(double ecDsM, Soil soil) {
    if (method.method() == Method.ONE_TO_FIVE && soil.spPct().isPresent()) {
      double f = SlavichPetterson1993.multiplier(soil.spPct().getAsDouble());
      return Outcome.ece(ecDsM * f, SlavichPetterson1993.SD_LN_WITH_SP);
    }
    if (method.method() == Method.ONE_TO_FIVE && soil.clayPct().isPresent()) {
      return byClay(ecDsM, soil.clayPct().getAsDouble());
    }
    return byTexture(ecDsM, soil);
  }

  private static Outcome byClay(double ecDsM, double clayPct) {
    double f = SlavichPetterson1993.multiplier(SaturationPercentage.capillary(clayPct));
    return Outcome.ece(ecDsM * f, clayPct > 20 ? 0.20 : clayPct >= 10 ? 0.30 : 0.40);
  }

  private Outcome byTexture(double ecDsM, Soil soil) {
    TextureGroup group = SoilGroup.of(soil);
    List<Texture> asked = List.of(soil.texture(), SoilGroup.word(group), Texture.UNKNOWN);
    Multiplier m =
        find(method.kind(), asked).orElseGet(() -> find(ReadingKind.EXTRACT, asked).orElseThrow());
    boolean ownRow = find(method.kind(), asked).isPresent();
    return Outcome.ece(ecDsM * m.value(), m.sdLn() + (ownRow ? 0 : SLURRY_MORE));
  }

  private Optional<Multiplier> find(ReadingKind kind, List<Texture> asked) {
    Optional<Multiplier> special =
        prairie ? PRAIRIE.find(method.method(), kind, asked) : Optional.empty();
    return special.isPresent() ? special : DEFAULTS.find(method.method(), kind, asked);
  }
}
