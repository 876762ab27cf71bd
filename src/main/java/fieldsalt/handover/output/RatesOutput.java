package fieldsalt.handover.output;

import fieldsalt.handover.input.MachineJob;
import fieldsalt.handover.input.ZoneFeature;
import fieldsalt.handover.table.Feature;
import fieldsalt.handover.table.Rounding;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * {@code rates.geojson} and {@code rates.shp}: the zones with one rate column, for a terminal or
 * program that takes a map of rates and not ISO 11783-10.
 */
public final class RatesOutput {
  private static final OutputColumns COLUMNS = OutputColumns.of("rates.geojson");

  private RatesOutput() {}

  /** A zone with its rate of one pass; empty where nobody can say an amount. */
  public static Feature of(ZoneFeature zone, MachineJob machine) {
    Map<String, Object> all = zone.properties();
    Number whole = (Number) all.get("gypsum_t_ha");
    int passes = ((Number) all.getOrDefault("gypsum_passes", 0)).intValue();
    Object rate =
        whole == null ? null : Rounding.decimals(whole.doubleValue() / Math.max(1, passes), 3);
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.putAll(
        COLUMNS.figures(
            "zone",
            zone.zone().name(),
            "product",
            machine.product(),
            "rate",
            rate,
            "unit",
            "t/ha",
            "passes",
            passes,
            "draft",
            Boolean.TRUE.equals(all.get("draft")) ? "yes" : "no"));
    return new Feature(zone.zone().shapeM(), figures);
  }
}
