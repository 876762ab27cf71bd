package fieldsalt.handover.output;

import fieldsalt.geo.RanchProjection;
import fieldsalt.handover.table.CsvTable;
import fieldsalt.plan.RanchPlan;
import fieldsalt.plan.field.CropYields;
import fieldsalt.plan.gypsum.RateRow;
import fieldsalt.plan.zone.Digits;
import fieldsalt.quantity.Dimension;
import fieldsalt.quantity.UnitSystem;
import fieldsalt.surface.next.Proposal;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/** Owner of rates.csv, crops.csv and next.csv. */
public final class TablesOutput {
  private static final String OF_ZONE = "{zone}_yield_pct";

  private TablesOutput() {}

  /** A line per zone. */
  public static CsvTable rates(List<RateRow> rates, UnitSystem units) {
    return new CsvTable(
        OutputColumns.of("rates.csv").names(units),
        rates.stream().map(rate -> cells(rate, units)).toList());
  }

  private static List<Object> cells(RateRow rate, UnitSystem units) {
    return List.of(
        rate.field(),
        rate.zone(),
        number(units, Dimension.AREA, rate.areaHa(), 4),
        number(units, Dimension.RATE, rate.ratePerPass(), 3),
        rate.passes(),
        number(units, Dimension.MASS, rate.tonnes(), 2),
        number(units, Dimension.RATE, rate.needed(), 2),
        number(units, Dimension.RATE, rate.low(), 2),
        number(units, Dimension.RATE, rate.high(), 2),
        number(units, Dimension.PURE, rate.chance(), 2),
        number(units, Dimension.WATER_DEPTH, rate.leachingMm(), 1),
        number(units, Dimension.MONEY_PER_AREA, rate.costPerHa(), 2),
        rate.firstStep(),
        rate.draft() ? "yes" : "no");
  }

  private static String number(UnitSystem units, Dimension dimension, double value, int decimals) {
    return BigDecimal.valueOf(dimension.in(units, value))
        .setScale(decimals, RoundingMode.HALF_UP)
        .toPlainString();
  }

  private static String number(
      UnitSystem units, Dimension dimension, OptionalDouble value, int decimals) {
    return value.isPresent() ? number(units, dimension, value.getAsDouble(), decimals) : "";
  }

  /** Expected relative yield of every compared crop in every zone, largest over the ranch first. */
  public static CsvTable crops(RanchPlan plan) {
    List<String> header = new ArrayList<>();
    for (String name : OutputColumns.of("crops.csv").names(UnitSystem.METRIC)) {
      if (name.equals(OF_ZONE)) {
        plan.zones().forEach(z -> header.add(OF_ZONE.replace("{zone}", z.zone().name())));
      } else {
        header.add(name);
      }
    }
    return new CsvTable(
        header, plan.crops().stream().map(c -> cells(c, plan.zones().size())).toList());
  }

  private static List<Object> cells(CropYields crop, int zones) {
    List<Object> row = new ArrayList<>();
    row.add(crop.crop().name());
    row.add(crop.ranchPct().map(pct -> Digits.of(pct, 1)).orElse(null));
    for (int z = 0; z < zones; z++) {
      row.add(crop.zonePct().isEmpty() ? null : Digits.of(crop.zonePct().get(z), 1));
    }
    row.add(crop.crop().ratingInWords());
    row.add(crop.crop().source());
    row.add(crop.crop().confidence());
    return java.util.Collections.unmodifiableList(row);
  }

  /** What to measure next, the most useful first. */
  public static CsvTable next(List<Proposal> best, RanchProjection projection) {
    List<List<Object>> rows = new ArrayList<>();
    for (Proposal p : best) {
      double[] degrees = projection.toLonLat(p.place().xM(), p.place().yM());
      rows.add(
          Arrays.asList(
              rows.size() + 1,
              measure(p.kind()),
              p.siteId(),
              p.field(),
              fixed(degrees[0], 7),
              fixed(degrees[1], 7),
              Double.isNaN(p.worth()) ? null : fixed(100 * p.worth(), 1),
              fixed(100 * p.ranchErrorAfter(), 1),
              fixed(100 * p.worstZoneErrorAfter(), 1)));
    }
    return new CsvTable(OutputColumns.of("next.csv").names(UnitSystem.METRIC), rows);
  }

  private static String measure(Proposal.Kind kind) {
    return switch (kind) {
      case DOUBTFUL_AGAIN -> "doubtful reading again, of the stored sample";
      case PASTE_RERUN -> "paste of the stored sample";
      case NEW_SITE -> "new site";
      case SODIUM -> "SAR of the saturated paste, of the stored sample";
      case CEC -> "CEC or texture of the stored sample";
    };
  }

  private static String fixed(double value, int decimals) {
    return String.format(java.util.Locale.ROOT, "%." + decimals + "f", value);
  }
}
