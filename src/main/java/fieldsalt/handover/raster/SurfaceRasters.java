package fieldsalt.handover.raster;

import fieldsalt.geo.RanchProjection;
import fieldsalt.handover.folder.WrittenFile;
import fieldsalt.handover.input.SurfaceLabels;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.map.SurfaceStrips;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The three rasters of each map: median, error and chance. */
public final class SurfaceRasters {
  private static final String EXTRAPOLATED =
      "1 where the survey or raster has a value that no sampled place has, or none";

  private final RanchProjection projection;
  private final SurfaceLabels labels;

  public SurfaceRasters(RanchProjection projection, SurfaceLabels labels) {
    this.projection = projection;
    this.labels = labels;
  }

  /**
   * Writes {@code ece.tif}, {@code ece-error.tif} and {@code p-above.tif}; where there are several
   * maps one set each, with the map's first field in the name. Where the surface follows a survey
   * or raster beyond what the samples cover, {@code extrapolated.tif} marks those cells.
   */
  public List<WrittenFile> write(Path folder, List<SurfaceStrips> maps) throws IOException {
    List<String> names = maps.stream().map(map -> String.join(" ", map.fields())).toList();
    Map<String, String> safe = SafeName.of(names);
    List<WrittenFile> written = new ArrayList<>();
    for (int i = 0; i < maps.size(); i++) {
      String suffix = maps.size() == 1 ? "" : "-" + safe.get(names.get(i));
      String of = maps.size() == 1 ? "" : ", " + names.get(i);
      written.addAll(write(folder, suffix + ".tif", of, maps.get(i)));
    }
    return written;
  }

  private List<WrittenFile> write(Path folder, String suffix, String of, SurfaceStrips map)
      throws IOException {
    RasterBand ece = new RasterBand(map.grid(), median(), labels.unit());
    RasterBand error = new RasterBand(map.grid(), error(), "");
    RasterBand chance = new RasterBand(map.grid(), chance(), "");
    List<WrittenFile> written = new ArrayList<>();
    try (GeoTiffWriter medians = writer(folder, "ece" + suffix, ece);
        GeoTiffWriter errors = writer(folder, "ece-error" + suffix, error);
        GeoTiffWriter chances = writer(folder, "p-above" + suffix, chance);
        Extrapolated extrapolated = new Extrapolated(folder, suffix, map)) {
      map.forEach(
          strip -> {
            int rows = strip.grid().rows();
            medians.rows(strip.median(), rows);
            errors.rows(strip.error(), rows);
            chances.rows(strip.chance(), rows);
            extrapolated.rows(strip);
          });
      written.add(new WrittenFile("ece" + suffix, ece.description() + of));
      written.add(new WrittenFile("ece-error" + suffix, error.description() + of));
      written.add(new WrittenFile("p-above" + suffix, chance.description() + of));
      if (extrapolated.hasCells()) {
        written.add(new WrittenFile(extrapolated.name(), EXTRAPOLATED + of));
      }
    }
    return written;
  }

  private GeoTiffWriter writer(Path folder, String name, RasterBand band) throws IOException {
    return new GeoTiffWriter(folder.resolve(name), band, projection);
  }

  /** The raster of cells beyond the samples; there is none if no cell is. */
  private final class Extrapolated implements AutoCloseable {
    private final Path file;
    private final Optional<GeoTiffWriter> writer;
    private boolean any;

    Extrapolated(Path folder, String suffix, SurfaceStrips map) throws IOException {
      file = folder.resolve("extrapolated" + suffix);
      writer =
          map.mayExtrapolate()
              ? Optional.of(writer(folder, name(), new RasterBand(map.grid(), EXTRAPOLATED, "")))
              : Optional.empty();
    }

    String name() {
      return file.getFileName().toString();
    }

    boolean hasCells() {
      return any;
    }

    void rows(SurfaceMap strip) throws IOException {
      if (writer.isPresent()) {
        any |= !strip.beyond().isEmpty();
        writer.get().rows(beyond(strip), strip.grid().rows());
      }
    }

    @Override
    public void close() throws IOException {
      if (writer.isPresent()) {
        writer.get().close();
        if (!any) {
          Files.delete(file);
        }
      }
    }
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
