package fieldsalt.surface.map;

import fieldsalt.basis.site.Scale;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.choice.MethodByField;
import fieldsalt.surface.choice.Tried;
import fieldsalt.surface.fit.Mixture;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.site.FieldCells;
import fieldsalt.surface.site.Grid;
import fieldsalt.surface.site.Points;
import fieldsalt.surface.site.Scratch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleConsumer;

/** Fills grids from a chosen method: median, error and chance of every cell. */
public final class MapMaker {
  /** Cells on a side of the squares that are predicted together. */
  static final int SQUARE = 16;

  private final MethodByField methods;
  private final Scale scale;

  public MapMaker(MethodByField methods, Scale scale) {
    this.methods = methods;
    this.scale = scale;
  }

  /** Whether the surface follows a survey or raster. */
  boolean hasDrift() {
    return methods.hasDrift();
  }

  /**
   * One map of some fields.
   *
   * @param progress told the share that is done, 0 to 1, never falling, by one thread at a time
   */
  public SurfaceMap map(
      Grid grid, List<FieldBoundary> fields, Map<String, Double> limits, DoubleConsumer progress) {
    SurfaceMap map = SurfaceMap.empty(grid, fields.stream().map(FieldBoundary::name).toList());
    FieldCells cells = new FieldCells(grid, map.fieldOf());
    List<int[]> squares = new ArrayList<>();
    for (int f = 0; f < fields.size(); f++) {
      int[] box = grid.boxOf(fields.get(f).shapeM().getEnvelopeInternal());
      cells.add(fields.get(f), (short) f, box);
      for (int row = box[2] / SQUARE; row * SQUARE < box[3]; row++) {
        squares.add(new int[] {f, row, box[0] / SQUARE, (box[1] + SQUARE - 1) / SQUARE});
      }
    }
    Progress told = new Progress(progress, squares.size());
    squares.parallelStream()
        .forEach(
            row -> {
              fill(map, cells, fields.get(row[0]), row, limits);
              told.add();
            });
    return map;
  }

  /**
   * Fills a row of squares with what is known in one field.
   *
   * @param row the field's index, the row of squares, its first column of squares and that after
   *     the last
   */
  private void fill(
      SurfaceMap map,
      FieldCells cells,
      FieldBoundary field,
      int[] row,
      Map<String, Double> limits) {
    Tried method = methods.of(field.name());
    double limit = limits.getOrDefault(field.name(), Double.NaN);
    Scratch scratch = new Scratch();
    for (int column = row[2]; column < row[3]; column++) {
      int[] own = cells.ofSquare((short) row[0], column * SQUARE, row[1] * SQUARE, SQUARE);
      if (own.length > 0) {
        fill(map, own, method, method.data().indexOf(field.name()), limit, scratch);
      }
    }
  }

  /** Counts rows of squares; tells a listener at most every half per cent. */
  private static final class Progress {
    private final DoubleConsumer listener;
    private final long all;
    private long done;
    private long told;

    Progress(DoubleConsumer listener, long all) {
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
      SurfaceMap map, int[] cells, Tried method, int part, double limit, Scratch scratch) {
    Grid grid = map.grid();
    List<PlaceM> places = new ArrayList<>(cells.length);
    for (int cell : cells) {
      places.add(
          new PlaceM(grid.centreX(cell % grid.columns()), grid.centreY(cell / grid.columns())));
    }
    Points points = Points.of(method.data(), part, places);
    Mixture[] known = mixtures(method, points, scratch);
    double limitOfZ = scale == Scale.LOG ? Math.log(Math.max(limit, 0)) : limit;
    for (int i = 0; i < cells.length; i++) {
      if (points.beyond()[i]) {
        synchronized (map) {
          map.beyond().set(cells[i]);
        }
      }
      double median = known[i].quantile(0.5);
      map.median()[cells[i]] = (float) (scale == Scale.LOG ? Math.exp(median) : median);
      map.error()[cells[i]] = (float) Math.sqrt(known[i].variance());
      map.chance()[cells[i]] =
          Double.isNaN(limit) ? Float.NaN : (float) (1 - known[i].below(limitOfZ));
    }
  }

  /** What is known of z at each point. */
  public static Mixture[] mixtures(Tried method, Points points) {
    return mixtures(method, points, new Scratch());
  }

  private static Mixture[] mixtures(Tried method, Points points, Scratch scratch) {
    double[] weights = method.predictors().stream().mapToDouble(p -> p.solved().weight()).toArray();
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
