package fieldsalt.plan.field;

import fieldsalt.classes.YieldModel;
import fieldsalt.facts.Crop;
import fieldsalt.plan.setting.CropSettings;
import fieldsalt.plan.zone.ZoneWork;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Crops by zone, gathered field after field. */
public final class CropTable {
  private final CropSettings settings;
  private final List<List<Double>> byCrop = new ArrayList<>();
  private final double[] sum;
  private double area;

  public CropTable(CropSettings settings) {
    this.settings = settings;
    settings.compare().forEach(crop -> byCrop.add(new ArrayList<>()));
    sum = new double[byCrop.size()];
  }

  /**
   * Yields of one field's zones.
   *
   * @return one list a compared crop, empty without a tolerance
   */
  public static List<List<Double>> yields(List<ZoneWork> works, CropSettings settings) {
    return settings.compare().stream()
        .map(crop -> crop.tolerance().isEmpty() ? List.<Double>of() : of(crop, works, settings))
        .toList();
  }

  private static List<Double> of(Crop crop, List<ZoneWork> works, CropSettings settings) {
    List<Double> byZone = new ArrayList<>();
    for (ZoneWork work : works) {
      YieldModel model =
          settings.model(crop.tolerance().orElseThrow(), work.soil().isGypsiferous());
      byZone.add(work.salt().expectedYield(model));
    }
    return byZone;
  }

  /** Adds a field's zones, given their hectares. */
  public void add(List<List<Double>> yields, List<Double> hectares) {
    for (int c = 0; c < sum.length; c++) {
      byCrop.get(c).addAll(yields.get(c));
      for (int z = 0; z < yields.get(c).size(); z++) {
        sum[c] += yields.get(c).get(z) * hectares.get(z);
      }
    }
    for (double ha : hectares) {
      area += ha;
    }
  }

  /** Largest expected yield over the ranch first; crops without a tolerance last. */
  public List<CropYields> table() {
    List<CropYields> table = new ArrayList<>();
    for (int c = 0; c < sum.length; c++) {
      Crop crop = settings.compare().get(c);
      Optional<Double> ranch =
          crop.tolerance().isEmpty() ? Optional.empty() : Optional.of(sum[c] / area);
      table.add(new CropYields(crop, byCrop.get(c), ranch));
    }
    table.sort(
        Comparator.comparingDouble((CropYields y) -> -y.ranchPct().orElse(-1.0))
            .thenComparing(y -> y.crop().name()));
    return table;
  }
}
