package fieldsalt.surface.fit;

import java.util.Arrays;
import java.util.Comparator;
import java.util.function.ToDoubleFunction;

/**
 * Maximum of a function inside a box, without derivatives (Nelder and Mead 1965, The Computer
 * Journal 7:308-313); points outside the box are moved to its wall.
 */
public final class NelderMead {
  private final ToDoubleFunction<double[]> function;
  private final double[] low;
  private final double[] high;
  private final int limit;
  private final double enough;

  /** A point and the function there. */
  public record Vertex(double[] at, double value) {}

  public NelderMead(ToDoubleFunction<double[]> function, double[] low, double[] high, int limit) {
    this.function = function;
    this.low = low.clone();
    this.high = high.clone();
    this.limit = limit;
    this.enough = Double.POSITIVE_INFINITY;
  }

  private NelderMead(NelderMead other, double enough) {
    this.function = other.function;
    this.low = other.low;
    this.high = other.high;
    this.limit = other.limit;
    this.enough = enough;
  }

  /** The same search, which stops once a value has been reached. */
  NelderMead until(double value) {
    return new NelderMead(this, value);
  }

  /**
   * Climbs from a start until all vertices agree to {@code tolerance} in value, or the limit of
   * evaluations is reached.
   */
  public Vertex climb(double[] start, double[] step, double tolerance) {
    Vertex[] simplex = simplex(start, step);
    int used = simplex.length;
    while (used < limit) {
      Arrays.sort(simplex, Comparator.comparingDouble(v -> -v.value()));
      double spread = simplex[0].value() - simplex[start.length].value();
      if (simplex[0].value() >= enough || (spread < tolerance && small(simplex))) {
        break;
      }
      used += improve(simplex);
    }
    Arrays.sort(simplex, Comparator.comparingDouble(v -> -v.value()));
    return simplex[0];
  }

  private static boolean small(Vertex[] simplex) {
    for (Vertex v : simplex) {
      for (int i = 0; i < v.at().length; i++) {
        if (Math.abs(v.at()[i] - simplex[0].at()[i]) > 2e-3) {
          return false;
        }
      }
    }
    return true;
  }

  private Vertex[] simplex(double[] start, double[] step) {
    Vertex[] simplex = new Vertex[start.length + 1];
    simplex[0] = at(start.clone());
    for (int i = 0; i < start.length; i++) {
      double[] other = simplex[0].at().clone();
      other[i] += other[i] + step[i] > high[i] ? -step[i] : step[i];
      simplex[i + 1] = at(other);
    }
    return simplex;
  }

  private Vertex at(double[] point) {
    for (int i = 0; i < point.length; i++) {
      point[i] = Math.min(high[i], Math.max(low[i], point[i]));
    }
    double value = function.applyAsDouble(point);
    return new Vertex(point, Double.isNaN(value) ? Double.NEGATIVE_INFINITY : value);
  }

  /** One step; the simplex is sorted, best first. Returns the evaluations spent. */
  private int improve(Vertex[] simplex) {
    int last = simplex.length - 1;
    double[] centre = centre(simplex);
    Vertex worst = simplex[last];
    Vertex reflected = at(along(centre, worst.at(), -1));
    if (reflected.value() > simplex[0].value()) {
      Vertex expanded = at(along(centre, worst.at(), -2));
      simplex[last] = expanded.value() > reflected.value() ? expanded : reflected;
      return 2;
    }
    if (reflected.value() > simplex[last - 1].value()) {
      simplex[last] = reflected;
      return 1;
    }
    boolean outside = reflected.value() > worst.value();
    Vertex contracted = at(along(centre, worst.at(), outside ? -0.5 : 0.5));
    if (contracted.value() > Math.max(worst.value(), reflected.value())) {
      simplex[last] = contracted;
      return 2;
    }
    for (int i = 1; i <= last; i++) {
      simplex[i] = at(along(simplex[0].at(), simplex[i].at(), 0.5));
    }
    return 2 + last;
  }

  private static double[] centre(Vertex[] simplex) {
    double[] centre = new double[simplex.length - 1];
    for (int v = 0; v + 1 < simplex.length; v++) {
      for (int i = 0; i < centre.length; i++) {
        centre[i] += simplex[v].at()[i] / centre.length;
      }
    }
    return centre;
  }

  private static double[] along(double[] from, double[] to, double share) {
    double[] point = new double[from.length];
    for (int i = 0; i < point.length; i++) {
      point[i] = from[i] + share * (to[i] - from[i]);
    }
    return point;
  }
}
