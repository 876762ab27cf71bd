package fieldsalt.surface;

import fieldsalt.basis.Scale;
import fieldsalt.basis.SiteReadings;
import fieldsalt.gaussian.Cholesky;
import fieldsalt.geo.PlaceM;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.StringJoiner;

/**
 * The side of fieldsalt in {@code src/test/bench/compare.sh}: one task on one file of points, timed
 * in process, the result written as raw little-endian floats.
 *
 * <p>{@code data DIR} writes the invented data: 50,000 points along passes 10 m apart and 500
 * points at random, both over 2 km x 2 km. {@code TASK CSV CELL_M THREADS REPETITIONS [OUT]} prints
 * the seconds of the last repetition.
 */
public final class KernelTimes {
  private static final double SIDE_M = 2000;

  /** The model of every comparison, also in the R scripts. */
  static final CovarianceModel MODEL = new CovarianceModel(new Spherical(250), 3, 0.1);

  private KernelTimes() {}

  /** See the class. */
  public static void main(String[] args) throws IOException {
    if (args[0].equals("data")) {
      writeData(Path.of(args[1]));
      return;
    }
    KernelData data = read(Path.of(args[1]));
    double cellM = Double.parseDouble(args[2]);
    int threads = Integer.parseInt(args[3]);
    Run run = run(args[0], data, cellM, threads);
    double seconds = 0;
    for (int i = 0; i < Integer.parseInt(args[4]); i++) {
      long start = System.nanoTime();
      run.once();
      seconds = (System.nanoTime() - start) / 1e9;
    }
    System.out.printf(Locale.ROOT, "%.6f%n", seconds);
    if (args.length > 5) {
      write(Path.of(args[5]), run);
    }
  }

  /** One task, to be repeated. */
  abstract static class Run {
    float[][] rasters = new float[0][];

    abstract void once();
  }

  private static Run run(String task, KernelData data, double cellM, int threads) {
    return switch (task) {
      case "leave-one-out" -> {
        Observations observations = observations(data);
        yield of(() -> leaveOneOut(observations));
      }
      case "reml" -> {
        Likelihood likelihood = new Likelihood(observations(data));
        yield of(() -> likelihood.of(MODEL));
      }
      case "cholesky" -> {
        double[][] v = covariance(data);
        double[][] copy = new double[v.length][v.length];
        yield of(() -> cholesky(v, copy));
      }
      default -> new Map(task, data, cellM, threads);
    };
  }

  private static Run of(Runnable work) {
    return new Run() {
      @Override
      void once() {
        work.run();
      }
    };
  }

  /** A whole grid, search and factors included. */
  private static final class Map extends Run {
    private final String task;
    private final KernelData data;
    private final KernelGrid cells;

    Map(String task, KernelData data, double cellM, int threads) {
      this.task = task;
      this.data = data;
      int side = (int) Math.round(SIDE_M / cellM);
      Grid grid = new Grid(0, SIDE_M, cellM, side, side);
      cells = new KernelGrid(grid, cell -> true, KernelGrid.Drift.NONE, threads);
      rasters = new float[2][grid.cells()];
    }

    @Override
    void once() {
      cells.predict(
          kernel(task, data),
          1,
          share -> {},
          (cell, estimate, variance) -> {
            rasters[0][cell] = (float) estimate;
            rasters[1][cell] = (float) variance;
          });
    }
  }

  /** Takes the next rows of both rasters, from the north. */
  public interface Rows {
    /** So many whole rows; the arrays are filled anew for the next. */
    void take(float[] estimate, float[] variance, int rows) throws IOException;
  }

  /** A square grid over the points, by one of the tasks, on all cores, strip by strip. */
  public static void strips(String task, Path csv, int side, int stripRows, Rows rows)
      throws IOException {
    KernelData data = read(csv);
    KernelGrid cells = KernelGrid.of(new Grid(0, SIDE_M, SIDE_M / side, side, side));
    PredictionKernel kernel = kernel(task, data);
    float[][] strip = new float[2][stripRows * side];
    for (int first = 0; first < side; first += stripRows) {
      int from = first * side;
      int last = Math.min(side, first + stripRows);
      cells.predictRows(
          kernel,
          1,
          first,
          last,
          share -> {},
          (cell, estimate, variance) -> {
            strip[0][cell - from] = (float) estimate;
            strip[1][cell - from] = (float) variance;
          });
      rows.take(strip[0], strip[1], last - first);
    }
  }

  static PredictionKernel kernel(String task, KernelData data) {
    return switch (task) {
      case "nearest-32" -> new NearestKernel(new KernelSites(MODEL, data, true), 32);
      case "shared-96" -> new SharedKernel(new KernelSites(MODEL, data, true), 96);
      case "all" -> GlobalKernel.of(new KernelSites(MODEL, data, true), true);
      case "idw-12" -> new InverseDistance(data, 2, 12);
      case "idw-all" -> new InverseDistance(data, 2, data.size());
      default -> throw new IllegalArgumentException("no such task: " + task);
    };
  }

  static Observations observations(KernelData data) {
    List<SiteReadings.Site> sites = new ArrayList<>();
    List<SiteReadings.Row> rows = new ArrayList<>();
    for (int i = 0; i < data.size(); i++) {
      PlaceM place = new PlaceM(data.xM()[i], data.yM()[i]);
      sites.add(new SiteReadings.Site("%06d".formatted(i), "F", place, Optional.empty()));
      rows.add(new SiteReadings.Row(i, data.value()[i], 0, List.of(), true, "paste", "A"));
    }
    return Observations.of(
        new SiteReadings(
            "z", "-", Scale.NATURAL, sites, rows, List.of(), new double[0][0], List.of()),
        List.of());
  }

  /** Every site's error and its variance, from data to figures. */
  static List<LeftOut> leaveOneOut(Observations data) {
    return new LeaveOneOut(data, List.of(Solved.of(data, MODEL))).kriging();
  }

  /** A bare factor; v is kept. */
  static double cholesky(double[][] v, double[][] copy) {
    for (int i = 0; i < v.length; i++) {
      System.arraycopy(v[i], 0, copy[i], 0, v.length);
    }
    return Cholesky.factor(copy).logDeterminant();
  }

  static double[][] covariance(KernelData data) {
    double[][] v = new double[data.size()][data.size()];
    for (int i = 0; i < v.length; i++) {
      for (int j = 0; j < v.length; j++) {
        double h = Math.hypot(data.xM()[i] - data.xM()[j], data.yM()[i] - data.yM()[j]);
        v[i][j] = i == j ? MODEL.pointVariance() : MODEL.covariance(h);
      }
    }
    return v;
  }

  static KernelData read(Path csv) throws IOException {
    List<String> lines = Files.readAllLines(csv);
    int n = lines.size() - 1;
    double[][] columns = new double[3][n];
    for (int i = 0; i < n; i++) {
      String[] cells = lines.get(i + 1).split(",");
      for (int c = 0; c < 3; c++) {
        columns[c][i] = Double.parseDouble(cells[c]);
      }
    }
    return KernelData.of(columns[0], columns[1], columns[2]);
  }

  private static void write(Path file, Run run) throws IOException {
    try (FileChannel channel =
        FileChannel.open(
            file,
            StandardOpenOption.CREATE,
            StandardOpenOption.TRUNCATE_EXISTING,
            StandardOpenOption.WRITE)) {
      for (float[] raster : run.rasters) {
        ByteBuffer bytes = ByteBuffer.allocate(4 * raster.length).order(ByteOrder.LITTLE_ENDIAN);
        bytes.asFloatBuffer().put(raster);
        channel.write(bytes);
      }
    }
  }

  /** A sum of 60 waves of 80 to 700 m, exponentiated, with noise of 0.1: a survey's look. */
  private static void writeData(Path folder) throws IOException {
    Files.createDirectories(folder);
    Random random = new Random(20261125);
    double[][] waves = new double[60][];
    for (int k = 0; k < waves.length; k++) {
      double length = 80 * Math.exp(random.nextDouble() * Math.log(700.0 / 80));
      double angle = 2 * Math.PI * random.nextDouble();
      double phase = 2 * Math.PI * random.nextDouble();
      waves[k] = new double[] {length, angle, phase};
    }
    double[][] few = new double[500][];
    Arrays.setAll(
        few, i -> new double[] {SIDE_M * random.nextDouble(), SIDE_M * random.nextDouble()});
    writePoints(folder.resolve("points500.csv"), few, waves, random);
    double[][] many = new double[50_000][];
    for (int i = 0; i < many.length; i++) {
      int pass = i / 250;
      many[i] =
          new double[] {
            10.0 * pass + 0.5 * random.nextGaussian(),
            SIDE_M * (i % 250 + random.nextDouble()) / 250
          };
    }
    writePoints(folder.resolve("points50000.csv"), many, waves, random);
  }

  private static void writePoints(Path file, double[][] points, double[][] waves, Random random)
      throws IOException {
    StringJoiner text = new StringJoiner("\n", "x,y,z\n", "\n");
    for (double[] p : points) {
      double sum = 0;
      for (double[] w : waves) {
        double along = p[0] * Math.cos(w[1]) + p[1] * Math.sin(w[1]);
        sum += Math.cos(2 * Math.PI * along / w[0] + w[2]);
      }
      double z = Math.exp(1.2 + 0.7 * sum / Math.sqrt(30)) + 0.1 * random.nextGaussian();
      text.add("%.3f,%.3f,%.4f".formatted(p[0], p[1], z));
    }
    Files.writeString(file, text.toString());
  }
}
