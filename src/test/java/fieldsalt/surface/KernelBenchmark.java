package fieldsalt.surface;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The kernels on one core, time a cell, and the solver's parts. {@code mvn -Pbench test} runs it.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class KernelBenchmark {
  private static final int SIDE = 160;
  private static final Grid GRID = new Grid(800, 1200, 2, SIDE, SIDE);

  private final float[] estimates = new float[GRID.cells()];
  private final float[] variances = new float[GRID.cells()];
  private KernelData many;
  private KernelData few;
  private PredictionKernel nearest;
  private PredictionKernel shared;
  private PredictionKernel all;
  private PredictionKernel idw;
  private Observations observations;
  private Likelihood likelihood;
  private double[][] covariance;
  private double[][] copy;

  /** Makes the data, and all that is made once a map. */
  @Setup
  public void prepare() throws java.io.IOException {
    Path folder = Path.of("target", "bench");
    KernelTimes.main(new String[] {"data", folder.toString()});
    many = KernelTimes.read(folder.resolve("points50000.csv"));
    few = KernelTimes.read(folder.resolve("points500.csv"));
    nearest = KernelTimes.kernel("nearest-32", many);
    shared = KernelTimes.kernel("shared-96", many);
    all = KernelTimes.kernel("all", few);
    idw = KernelTimes.kernel("idw-12", many);
    observations = KernelTimes.observations(few);
    likelihood = new Likelihood(observations);
    covariance = KernelTimes.covariance(few);
    copy = new double[500][500];
  }

  private float[] predict(PredictionKernel kernel) {
    new KernelGrid(GRID, cell -> true, KernelGrid.Drift.NONE, 1)
        .predict(
            kernel,
            1,
            share -> {},
            (cell, estimate, variance) -> {
              estimates[cell] = (float) estimate;
              variances[cell] = (float) variance;
            });
    return estimates;
  }

  /** 32 nearest of 50,000 points, cells of 2 m. */
  @Benchmark
  @OperationsPerInvocation(SIDE * SIDE)
  public float[] cellNearest32() {
    return predict(nearest);
  }

  /** Shared neighbourhood of 96 of 50,000 points, cells of 2 m. */
  @Benchmark
  @OperationsPerInvocation(SIDE * SIDE)
  public float[] cellShared96() {
    return predict(shared);
  }

  /** All of 500 points. */
  @Benchmark
  @OperationsPerInvocation(SIDE * SIDE)
  public float[] cellAll500() {
    return predict(all);
  }

  /** Inverse distance, 12 nearest of 50,000 points. */
  @Benchmark
  @OperationsPerInvocation(SIDE * SIDE)
  public float[] cellIdw12() {
    return predict(idw);
  }

  /** Leave-one-out of 500 points, from data to figures. */
  @Benchmark
  public List<LeftOut> leaveOneOut500() {
    return KernelTimes.leaveOneOut(observations);
  }

  /** One evaluation of the restricted likelihood, 500 points. */
  @Benchmark
  public double reml500() {
    return likelihood.of(KernelTimes.MODEL);
  }

  /** A bare Cholesky factor of 500 rows. */
  @Benchmark
  public double cholesky500() {
    return KernelTimes.cholesky(covariance, copy);
  }
}
