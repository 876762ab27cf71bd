package fieldsalt.plan.field;

import fieldsalt.classes.YieldModel;
import fieldsalt.facts.Crop;
import fieldsalt.plan.setting.CropSettings;
import fieldsalt.plan.zone.ZoneWork;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Crops by zone, largest expected yield over the ranch first. */
public final class CropTable {
  private CropTable() {}

  public static List<CropYields> of(List<ZoneWork> works, CropSettings settings) {
    return settings.compare().stream()
        .map(crop -> of(crop, works, settings))
        .sorted(
            Comparator.comparingDouble((CropYields y) -> -y.ranchPct().orElse(-1.0))
                .thenComparing(y -> y.crop().name()))
        .toList();
  }

  private static CropYields of(Crop crop, List<ZoneWork> works, CropSettings settings) {
    if (crop.tolerance().isEmpty()) {
      return new CropYields(crop, List.of(), Optional.empty());
    }
    List<Double> byZone = new ArrayList<>();
    double sum = 0;
    double area = 0;
    for (ZoneWork work : works) {
      YieldModel model =
          settings.model(crop.tolerance().orElseThrow(), work.soil().isGypsiferous());
      double pct = work.salt().expectedYield(model);
      byZone.add(pct);
      sum += pct * work.areaHa();
      area += work.areaHa();
    }
    return new CropYields(crop, byZone, Optional.of(sum / area));
  }
}
