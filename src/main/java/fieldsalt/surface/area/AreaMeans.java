package fieldsalt.surface.area;

import java.util.List;
import java.util.function.Function;
import java.util.stream.DoubleStream;

/**
 * Means over areas of the property in its own unit.
 *
 * @param mean one an area
 * @param low 5 % quantile of each mean
 * @param high 95 % quantile of each mean
 */
public record AreaMeans(double[] mean, double[] low, double[] high) {
  /** Those of several fields, one after another. */
  public static AreaMeans joined(List<AreaMeans> parts) {
    return new AreaMeans(
        joined(parts, AreaMeans::mean),
        joined(parts, AreaMeans::low),
        joined(parts, AreaMeans::high));
  }

  private static double[] joined(List<AreaMeans> parts, Function<AreaMeans, double[]> figure) {
    return parts.stream().map(figure).flatMapToDouble(DoubleStream::of).toArray();
  }
}
