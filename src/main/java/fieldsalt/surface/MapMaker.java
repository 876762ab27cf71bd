package fieldsalt.surface;

import fieldsalt.basis.Scale;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.FieldBoundary;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** Fills grids from a chosen method: median, error and chance of every cell. */
final class MapMaker {
  /** Cells predicted together. */
  private static final int STRIP = 256;

  private static final int SQUARE = 16;

  private final Tried method;
  private final Scale scale;
  private final double[] weights;

  MapMaker(Tried method, Scale scale) {
    this.method = method;
    this.scale = scale;
    this.weights = method.predictors().stream().mapToDouble(p -> p.solved().weight()).toArray();
  }

  /** One map of some fields. */
  SurfaceMap map(Grid grid, List<FieldBoundary> fields, Map<String, Double> limits) {
    FieldCells cells = FieldCells.of(grid, fields);
    float[][] out = new float[3][grid.cells()];
    for (float[] band : out) {
      Arrays.fill(band, Float.NaN);
    }
    boolean[] beyond = new boolean[grid.cells()];
    for (int f = 0; f < fields.size(); f++) {
      int part = method.data().indexOf(fields.get(f).name());
      double limit = limits.getOrDefault(fields.get(f).name(), Double.NaN);
      int[] own = bySquares(cells.cellsOf(f), grid.columns());
      IntStream.range(0, (own.length + STRIP - 1) / STRIP)
          .parallel()
          .forEach(s -> fill(grid, strip(own, s), part, limit, out, beyond));
    }
    List<String> names = fields.stream().map(FieldBoundary::name).toList();
    return new SurfaceMap(grid, names, cells.fieldOf(), out[0], out[1], out[2], bits(beyond));
  }

  /** Cells ordered by squares of 16 x 16, so that a strip's cells are near one another. */
  private static int[] bySquares(int[] cells, int columns) {
    return Arrays.stream(cells)
        .mapToLong(
            cell -> {
              long square = cell / columns / SQUARE * (long) columns + cell % columns / SQUARE;
              return square << 32 | cell;
            })
        .sorted()
        .mapToInt(key -> (int) key)
        .toArray();
  }

  private static BitSet bits(boolean[] set) {
    BitSet bits = new BitSet();
    for (int i = 0; i < set.length; i++) {
      if (set[i]) {
        bits.set(i);
      }
    }
    return bits;
  }

  private static int[] strip(int[] cells, int s) {
    return Arrays.copyOfRange(cells, s * STRIP, Math.min(cells.length, (s + 1) * STRIP));
  }

  private void fill(
      Grid grid, int[] cells, int part, double limit, float[][] out, boolean[] beyond) {
    List<PlaceM> places = new ArrayList<>(cells.length);
    for (int cell : cells) {
      places.add(
          new PlaceM(grid.centreX(cell % grid.columns()), grid.centreY(cell / grid.columns())));
    }
    Points points = Points.of(method.data(), part, places);
    Mixture[] known = mixtures(points);
    double limitOfZ = scale == Scale.LOG ? Math.log(Math.max(limit, 0)) : limit;
    for (int i = 0; i < cells.length; i++) {
      beyond[cells[i]] = points.beyond()[i];
      double median = known[i].quantile(0.5);
      out[0][cells[i]] = (float) (scale == Scale.LOG ? Math.exp(median) : median);
      out[1][cells[i]] = (float) Math.sqrt(known[i].variance());
      out[2][cells[i]] = Double.isNaN(limit) ? Float.NaN : (float) (1 - known[i].below(limitOfZ));
    }
  }

  /** What is known of z at each point. */
  Mixture[] mixtures(Points points) {
    int count = weights.length;
    double[][] mean = new double[points.size()][count];
    double[][] sd = new double[points.size()][count];
    for (int k = 0; k < count; k++) {
      Predictor.Predicted predicted = method.predictors().get(k).predict(points);
      double[] means = predicted.mean();
      double[] variances = predicted.variance();
      for (int i = 0; i < means.length; i++) {
        mean[i][k] = means[i];
        sd[i][k] = Math.sqrt(variances[i]);
      }
    }
    Mixture[] known = new Mixture[points.size()];
    Arrays.setAll(known, i -> new Mixture(weights, mean[i], sd[i]));
    return known;
  }
}
