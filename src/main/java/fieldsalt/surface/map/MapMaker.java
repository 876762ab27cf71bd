package fieldsalt.surface.map;

import fieldsalt.basis.site.Scale;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.choice.Tried;
import fieldsalt.surface.fit.Mixture;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.site.FieldCells;
import fieldsalt.surface.site.Grid;
import fieldsalt.surface.site.Points;
import fieldsalt.surface.site.Scratch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;

/** Fills grids from a chosen method: median, error and chance of every cell. */
public final class MapMaker {
  /** Cells on a side of the squares that are predicted together. */
  static final int SQUARE = 16;

  private final Tried method;
  private final Scale scale;
  private final double[] weights;

  public MapMaker(Tried method, Scale scale) {
    this.method = method;
    this.scale = scale;
    this.weights = method.predictors().stream().mapToDouble(p -> p.solved().weight()).toArray();
  }

  /** Whether the surface follows a survey or raster. */
  boolean hasDrift() {
    return !method.data().drifts().isEmpty();
  }

  /**
   * One map of some fields.
   *
   * @param progress told the share that is done, 0 to 1, never falling, by one thread at a time
   */
  public SurfaceMap map(
      Grid grid, List<FieldBoundary> fields, Map<String, Double> limits, DoubleConsumer progress) {
    FieldCells cells = FieldCells.of(grid, fields);
    float[][] out = new float[3][grid.cells()];
    for (float[] band : out) {
      Arrays.fill(band, Float.NaN);
    }
    BitSet beyond = new BitSet();
    int across = (grid.columns() + SQUARE - 1) / SQUARE;
    int down = (grid.rows() + SQUARE - 1) / SQUARE;
    Told told = new Told(progress, fields.size() * (long) down);
    for (int f = 0; f < fields.size(); f++) {
      short field = (short) f;
      int part = method.data().indexOf(fields.get(f).name());
      double limit = limits.getOrDefault(fields.get(f).name(), Double.NaN);
      IntStream.range(0, down)
          .parallel()
          .forEach(
              row -> {
                Scratch scratch = new Scratch();
                for (int column = 0; column < across; column++) {
                  int[] own = cells.ofSquare(field, column * SQUARE, row * SQUARE, SQUARE);
                  if (own.length > 0) {
                    fill(grid, own, part, limit, out, beyond, scratch);
                  }
                }
                told.add();
              });
    }
    List<String> names = fields.stream().map(FieldBoundary::name).toList();
    return new SurfaceMap(grid, names, cells.fieldOf(), out[0], out[1], out[2], beyond);
  }

  /** Counts rows of squares; tells a listener at most every half per cent. */
  private static final class Told {
    private final DoubleConsumer listener;
    private final long all;
    private long done;
    private long told;

    Told(DoubleConsumer listener, long all) {
      this.listener = listener;
      this.all = all;
    }

    synchronized void add() {
      done++;
      if (done - told >= all / 200.0) {
        told = done;
        listener.accept((double) done / all);
      }
    }
  }

  private void fill(
      Grid grid,
      int[] cells,
      int part,
      double limit,
      float[][] out,
      BitSet beyond,
      Scratch scratch) {
    List<PlaceM> places = new ArrayList<>(cells.length);
    for (int cell : cells) {
      places.add(
          new PlaceM(grid.centreX(cell % grid.columns()), grid.centreY(cell / grid.columns())));
    }
    Points points = Points.of(method.data(), part, places);
    Mixture[] known = mixtures(points, scratch);
    double limitOfZ = scale == Scale.LOG ? Math.log(Math.max(limit, 0)) : limit;
    for (int i = 0; i < cells.length; i++) {
      if (points.beyond()[i]) {
        synchronized (beyond) {
          beyond.set(cells[i]);
        }
      }
      double median = known[i].quantile(0.5);
      out[0][cells[i]] = (float) (scale == Scale.LOG ? Math.exp(median) : median);
      out[1][cells[i]] = (float) Math.sqrt(known[i].variance());
      out[2][cells[i]] = Double.isNaN(limit) ? Float.NaN : (float) (1 - known[i].below(limitOfZ));
    }
  }

  /** What is known of z at each point. */
  public Mixture[] mixtures(Points points) {
    return mixtures(points, new Scratch());
  }

  private Mixture[] mixtures(Points points, Scratch scratch) {
    int count = weights.length;
    double[][] mean = new double[points.size()][count];
    double[][] sd = new double[points.size()][count];
    for (int k = 0; k < count; k++) {
      Predictor predictor = method.predictors().get(k);
      Predictor.Predicted predicted = predictor.predict(points, scratch);
      double[] means = predicted.mean();
      double[] variances = predicted.variance();
      double[] drifts = predictor.solved().driftVariances();
      for (int i = 0; i < means.length; i++) {
        mean[i][k] = means[i];
        sd[i][k] = Math.sqrt(variances[i] + points.unknownVariance(drifts, i));
      }
    }
    Mixture[] known = new Mixture[points.size()];
    Arrays.setAll(known, i -> new Mixture(weights, mean[i], sd[i]));
    return known;
  }
}
