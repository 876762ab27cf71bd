package fieldsalt.zones;

import fieldsalt.zones.field.ZoneSettings;
import fieldsalt.zones.field.ZoneSettings.By;
import java.util.List;

/** Settings and findings of tests that differ in one thing. */
public final class ChangedZones {
  private ChangedZones() {}

  public static ZoneSettings withBreaks(ZoneSettings s, List<Double> other) {
    return new ZoneSettings(
        By.BREAKS, other, s.count(), s.minAreaHa(), s.minWidthM(), s.followFieldMean(), s.unit());
  }

  public static ZoneSettings withCount(ZoneSettings s, int other) {
    return new ZoneSettings(
        By.COUNT, s.breaks(), other, s.minAreaHa(), s.minWidthM(), s.followFieldMean(), s.unit());
  }

  public static ZoneSettings withFollowFieldMean(ZoneSettings s, boolean other) {
    return new ZoneSettings(
        s.by(), s.breaks(), s.count(), s.minAreaHa(), s.minWidthM(), other, s.unit());
  }

  public static ZoneSettings withMinAreaHa(ZoneSettings s, double other) {
    return new ZoneSettings(
        s.by(), s.breaks(), s.count(), other, s.minWidthM(), s.followFieldMean(), s.unit());
  }

  public static ZoneSettings withMinWidthM(ZoneSettings s, double other) {
    return new ZoneSettings(
        s.by(), s.breaks(), s.count(), s.minAreaHa(), other, s.followFieldMean(), s.unit());
  }

  public static ZoneSettings withUnit(ZoneSettings s, String other) {
    return new ZoneSettings(
        s.by(), s.breaks(), s.count(), s.minAreaHa(), s.minWidthM(), s.followFieldMean(), other);
  }
}
