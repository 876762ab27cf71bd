package fieldsalt.handover;

import fieldsalt.geo.Projections;
import fieldsalt.surface.Grid;
import fieldsalt.surface.KernelTimes;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Ten million cells from 50,000 points, each from 96 shared neighbours: estimate and variance,
 * streamed into two GeoTIFFs or, without a folder, thrown away. Prints seconds and the most memory
 * that the process held, MB (0 where the system does not tell it). {@code LargeRasterTimes CSV
 * [FOLDER]}
 */
public final class LargeRasterTimes {
  private static final int SIDE = 3163;
  private static final double SIDE_M = 2000;

  private LargeRasterTimes() {}

  /** See the class. */
  public static void main(String[] args) throws IOException {
    long start = System.nanoTime();
    Path points = Path.of(args[0]);
    if (args.length > 1) {
      write(points, Path.of(args[1]));
    } else {
      double[] sum = new double[1];
      strips(points, (estimate, variance, rows) -> sum[0] += estimate[0] + variance[0]);
      if (Double.isNaN(sum[0])) {
        throw new IllegalStateException("nothing was computed");
      }
    }
    double seconds = (System.nanoTime() - start) / 1e9;
    System.out.printf(Locale.ROOT, "%.3f %d%n", seconds, mostMemoryMb());
  }

  private static void strips(Path points, KernelTimes.Rows rows) throws IOException {
    KernelTimes.strips("shared-96", points, SIDE, TileLevel.TILE, rows);
  }

  private static void write(Path points, Path folder) throws IOException {
    try (GeoTiffWriter estimates = writer(folder, "estimate");
        GeoTiffWriter variances = writer(folder, "variance")) {
      strips(
          points,
          (estimate, variance, rows) -> {
            estimates.rows(estimate, rows);
            variances.rows(variance, rows);
          });
    }
  }

  private static GeoTiffWriter writer(Path folder, String name) throws IOException {
    Path file = folder.resolve(name + ".tif");
    Files.deleteIfExists(file);
    Grid grid = new Grid(0, SIDE_M, SIDE_M / SIDE, SIDE, SIDE);
    return new GeoTiffWriter(file, new RasterBand(grid, name, ""), Projections.local());
  }

  private static long mostMemoryMb() throws IOException {
    Path status = Path.of("/proc/self/status");
    if (!Files.exists(status)) {
      return 0;
    }
    return Files.readAllLines(status).stream()
        .filter(line -> line.startsWith("VmHWM"))
        .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024)
        .findFirst()
        .orElse(0);
  }
}
