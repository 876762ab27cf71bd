package fieldsalt.handover.input;

import fieldsalt.geo.RanchProjection;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.map.SurfaceStrips;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * All that the files say.
 *
 * @param projection of every shape and raster
 * @param fields the ranch's fields, names unique
 * @param zones in the order in which files list them; those of a field tile it
 * @param samples in the order in which files list them
 * @param maps the surface as it is held: one grid for the ranch, or one a field
 * @param rasters the same maps as they are written; their cells may be smaller
 * @param labels what the mapped numbers are called
 * @param machine the rates for the spreader, if there are any
 */
public record HandoverInput(
    RanchProjection projection,
    List<FieldBoundary> fields,
    List<ZoneFeature> zones,
    List<SampleFeature> samples,
    List<SurfaceMap> maps,
    List<SurfaceStrips> rasters,
    SurfaceLabels labels,
    Optional<MachineJob> machine) {
  public HandoverInput {
    fields = List.copyOf(fields);
    zones = List.copyOf(zones);
    samples = List.copyOf(samples);
    maps = List.copyOf(maps);
    rasters = List.copyOf(rasters);
    Set<String> names = new HashSet<>();
    fields.forEach(field -> names.add(field.name()));
    for (ZoneFeature zone : zones) {
      if (!names.contains(zone.zone().field())) {
        throw new IllegalArgumentException("zone of no field: " + zone.zone().name());
      }
    }
  }
}
