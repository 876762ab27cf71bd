package fieldsalt.handover;

import fieldsalt.geo.RanchProjection;
import fieldsalt.surface.Grid;
import fieldsalt.surface.SurfaceMap;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The three rasters of each map: median, error and chance. */
final class SurfaceRasters {
  private static final String EXTRAPOLATED =
      "1 where the survey or raster has a value that no sampled place has, or none";

  private final RanchProjection projection;
  private final SurfaceLabels labels;

  SurfaceRasters(RanchProjection projection, SurfaceLabels labels) {
    this.projection = projection;
    this.labels = labels;
  }

  /**
   * Writes {@code ece.tif}, {@code ece-error.tif} and {@code p-above.tif}; where there are several
   * maps one set each, with the map's first field in the name. Where the surface follows a survey
   * or raster beyond what the samples cover, {@code extrapolated.tif} marks those cells.
   */
  List<WrittenFile> write(Path folder, List<SurfaceMap> maps) throws IOException {
    List<String> names = maps.stream().map(map -> String.join(" ", map.fields())).toList();
    Map<String, String> safe = SafeName.of(names);
    List<WrittenFile> written = new ArrayList<>();
    for (int i = 0; i < maps.size(); i++) {
      String suffix = maps.size() == 1 ? "" : "-" + safe.get(names.get(i));
      String of = maps.size() == 1 ? "" : ", " + names.get(i);
      SurfaceMap map = maps.get(i);
      Grid grid = map.grid();
      RasterBand ece = new RasterBand(grid, median(), labels.unit());
      written.add(raster(folder, "ece" + suffix, of, ece, map.median()));
      RasterBand error = new RasterBand(grid, error(), "");
      written.add(raster(folder, "ece-error" + suffix, of, error, map.error()));
      RasterBand chance = new RasterBand(grid, chance(), "");
      written.add(raster(folder, "p-above" + suffix, of, chance, map.chance()));
      if (!map.beyond().isEmpty()) {
        RasterBand beyond = new RasterBand(grid, EXTRAPOLATED, "");
        written.add(raster(folder, "extrapolated" + suffix, of, beyond, beyond(map)));
      }
    }
    return written;
  }

  private WrittenFile raster(Path folder, String name, String of, RasterBand band, float[] values)
      throws IOException {
    GeoTiffWriter.write(folder.resolve(name + ".tif"), band, values, projection);
    return new WrittenFile(name + ".tif", band.description() + of);
  }

  private static float[] beyond(SurfaceMap map) {
    float[] values = new float[map.fieldOf().length];
    for (int i = 0; i < values.length; i++) {
      values[i] = map.fieldOf()[i] < 0 ? Float.NaN : map.beyond().get(i) ? 1 : 0;
    }
    return values;
  }

  private String median() {
    return "median " + labels.property();
  }

  private String error() {
    return "standard error of " + (labels.logScale() ? "ln " : "") + labels.property();
  }

  private String chance() {
    return "chance to be above " + labels.limit();
  }
}
