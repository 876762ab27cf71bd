package fieldsalt.basis.relation;

import fieldsalt.facts.RaymentLyons2011Table31;
import fieldsalt.quantity.Method;
import fieldsalt.read.sample.Soil;
import java.util.List;
import java.util.Optional;

/**
 * EC1:5 to ECe through the matching class limits of Rayment &amp; Lyons 2011, table 3.1 (after Shaw
 * et al. 1987, Shaw 1988, Tolmie &amp; Biggs 2000), by clay content, straight between them on the
 * log scale and by the end limits' ratio beyond them. dS/m at 25 °C. Queensland; limits seen in
 * print; the error is judgement (0.20, below 20 % clay 0.30). Refuses clay outside 10-80 % and a
 * row without clay.
 */
public final class RaymentLyons2011 implements EceRelation {
  @Override
  public String name() {
    return "RaymentLyons2011";
  }

  @Override
  public String citation() {
    return "Rayment & Lyons 2011, Soil Chemical Methods - Australasia, table 3.1";
  }

  @Override
  public String confidence() {
    return "S";
  }

  @Override
  public String domain() {
    return "Queensland, 10-80 % clay";
  }

  @Override
  public boolean takes(MethodKey method) {
    return method.method() == Method.ONE_TO_FIVE;
  }

  @Override
  public Outcome convert(double ecDsM, Soil soil) {
    if (soil.clayPct().isEmpty()) {
      return new Outcome.Refusal("needs clay %");
    }
    double clay = soil.clayPct().getAsDouble();
    Optional<RaymentLyons2011Table31.Band> band = RaymentLyons2011Table31.band(clay);
    return band.isEmpty()
        ? new Outcome.Refusal("holds for 10 to 80 % clay only")
        : Outcome.ece(between(ecDsM, band.get().ec1to5()), clay < 20 ? 0.30 : 0.20);
  }

  private static double between(double ec, List<Double> limits) {
    double[] ece = RaymentLyons2011Table31.eceLimits();
    int last = ece.length - 1;
    if (ec <= limits.get(0)) {
      return ec * ece[0] / limits.get(0);
    }
    if (ec >= limits.get(last)) {
      return ec * ece[last] / limits.get(last);
    }
    int i = 0;
    while (ec > limits.get(i + 1)) {
      i++;
    }
    double part = Math.log(ec / limits.get(i)) / Math.log(limits.get(i + 1) / limits.get(i));
    return ece[i] * Math.pow(ece[i + 1] / ece[i], part);
  }
}
