package fieldsalt.plan.soil;

import fieldsalt.facts.UsSalinityLaboratory1954;
import fieldsalt.facts.UsualSoil;
import fieldsalt.plan.draw.Draws;
import fieldsalt.plan.draw.Futures;
import fieldsalt.plan.draw.Futures.Kind;
import fieldsalt.plan.draw.Known;
import fieldsalt.plan.draw.Known.Source;
import fieldsalt.plan.draw.ZoneDraws;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Futures of what gypsum depends on, zone by zone: measured values first, the texture's usual ones
 * where nothing was measured.
 *
 * @param esp percent
 * @param sar of the saturation extract, where ESP was worked out from it
 * @param cec cmolc/kg
 * @param bulkDensity Mg/m3
 */
public record SoilDraws(ZoneDraws esp, ZoneDraws sar, ZoneDraws cec, ZoneDraws bulkDensity) {
  /** Relative error of the exchangeable sodium ratio taken from SAR (common practice). */
  public static final double ESR_ERROR = 0.20;

  /**
   * Of one field.
   *
   * @param zones of the field, each with its soil
   */
  public static SoilDraws of(
      String field,
      List<ZoneGround> zones,
      List<FieldSoil> soils,
      SoilProperties known,
      Futures futures) {
    PropertyDraws measured =
        new PropertyDraws(field, zones, futures.field("soil of " + field), futures);
    ZoneDraws esp = measured.of(known.esp(), Kind.ESP);
    ZoneDraws sar = measured.of(known.sar(), Kind.SAR);
    ZoneDraws cec = measured.of(known.cec(), Kind.CEC);
    ZoneDraws density = measured.of(known.bulkDensity(), Kind.BULK_DENSITY);
    return new SoilDraws(
        espOrFromSar(esp, sar, futures.shared(Kind.ESR_REGRESSION)),
        sar,
        usualCec(cec, soils, futures.shared(Kind.USUAL_CEC)),
        usualDensity(density, soils, futures.shared(Kind.USUAL_BULK_DENSITY)));
  }

  private static ZoneDraws espOrFromSar(ZoneDraws esp, ZoneDraws sar, double[] regression) {
    double[][] values = esp.values().clone();
    List<Known> known = new ArrayList<>(esp.known());
    for (int z = 0; z < values.length; z++) {
      boolean better = sar.has(z) && sar.known().get(z).source() == Source.SURFACE;
      boolean weak = values[z] == null || esp.known().get(z).source() != Source.SURFACE;
      if (sar.has(z) && weak && (values[z] == null || better)) {
        values[z] = fromSar(sar.values()[z], regression);
        known.set(z, sar.known().get(z).asWorkedOut());
      }
    }
    return new ZoneDraws(values, known);
  }

  private static double[] fromSar(double[] sar, double[] regression) {
    double[] out = new double[sar.length];
    for (int d = 0; d < out.length; d++) {
      double esr =
          UsSalinityLaboratory1954.esr(sar[d]) * Math.max(0, 1 + ESR_ERROR * regression[d]);
      out[d] = UsSalinityLaboratory1954.espOfEsr(esr);
    }
    return out;
  }

  private static ZoneDraws usualCec(ZoneDraws measured, List<FieldSoil> soils, double[] error) {
    double[][] values = measured.values().clone();
    List<Known> known = new ArrayList<>(measured.known());
    for (int z = 0; z < values.length; z++) {
      FieldSoil soil = soils.get(z);
      OptionalDouble usual = UsualSoil.cec(soil.texture(), soil.clayPct(), soil.omPct());
      if (values[z] == null && usual.isPresent()) {
        double middle = usual.getAsDouble();
        values[z] = Draws.map(error, e -> middle * Math.exp(UsualSoil.CEC_ERROR_LN * e));
        known.set(z, new Known(Source.TEXTURE, 0));
      }
    }
    return new ZoneDraws(values, known);
  }

  private static ZoneDraws usualDensity(ZoneDraws measured, List<FieldSoil> soils, double[] error) {
    double[][] values = measured.values().clone();
    List<Known> known = new ArrayList<>(measured.known());
    for (int z = 0; z < values.length; z++) {
      if (values[z] == null) {
        double middle = UsualSoil.bulkDensity(soils.get(z).texture());
        values[z] =
            Draws.map(error, e -> middle * Math.max(0.5, 1 + UsualSoil.BULK_DENSITY_ERROR * e));
        known.set(z, new Known(Source.TEXTURE, 0));
      }
    }
    return new ZoneDraws(values, known);
  }
}
