package fieldsalt.zones;

import fieldsalt.classes.ClassScheme;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.zones.field.SecondCriterion;
import fieldsalt.zones.field.ZoneMap;
import fieldsalt.zones.field.ZoneSettings;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Zones of several fields that maps hold. */
public final class RanchZones {
  private RanchZones() {}

  /** Without a second criterion. */
  public static ZoneMap build(
      List<SurfaceMap> maps,
      List<FieldBoundary> fields,
      Map<String, ClassScheme> schemes,
      ZoneSettings settings) {
    return build(maps, fields, schemes, settings, Map.of());
  }

  /** Fields that no map holds get no zone. */
  public static ZoneMap build(
      List<SurfaceMap> maps,
      List<FieldBoundary> fields,
      Map<String, ClassScheme> schemes,
      ZoneSettings settings,
      Map<String, SecondCriterion> second) {
    List<ZoneMap> zones = new ArrayList<>();
    for (FieldBoundary field : fields) {
      maps.stream()
          .filter(m -> m.fields().contains(field.name()))
          .findFirst()
          .map(
              m ->
                  ZoneBuilder.build(
                      m,
                      field,
                      schemes.get(field.name()),
                      settings,
                      Optional.ofNullable(second.get(field.name()))))
          .ifPresent(zones::add);
    }
    return ZoneMap.joined(zones);
  }
}
