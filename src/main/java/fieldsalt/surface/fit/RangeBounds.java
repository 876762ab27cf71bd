package fieldsalt.surface.fit;

import fieldsalt.surface.site.FieldRows;
import fieldsalt.surface.site.Observations;

/**
 * Where the distance parameter may lie: from half the smallest positive spacing of two sites of one
 * field to twice the longest field's diagonal (of its sites' bounding box); without bounds the
 * likelihood of a trend runs away.
 *
 * @param typicalSpacingM median over sites of the distance to the nearest other place
 */
public record RangeBounds(double lowM, double highM, double typicalSpacingM) {
  /** Places closer than this are one place. */
  private static final double SAME_PLACE_M = 0.01;

  static RangeBounds of(Observations data) {
    double diagonal = longestDiagonal(data);
    java.util.List<Double> nearest = new java.util.ArrayList<>();
    for (FieldRows part : data.parts()) {
      for (int site = 0; site < part.x().length; site++) {
        double least = nearestOther(part, site);
        if (least < Double.POSITIVE_INFINITY) {
          nearest.add(least);
        }
      }
    }
    if (nearest.isEmpty()) {
      return new RangeBounds(1, 2000, 200); // every field's sites stand in one place
    }
    java.util.Collections.sort(nearest);
    return new RangeBounds(nearest.get(0) / 2, 2 * diagonal, nearest.get(nearest.size() / 2));
  }

  /** Distance to the nearest other place; infinite if there is none. */
  private static double nearestOther(FieldRows part, int site) {
    double least = Double.POSITIVE_INFINITY;
    for (int other = 0; other < part.x().length; other++) {
      double d = Math.hypot(part.x()[other] - part.x()[site], part.y()[other] - part.y()[site]);
      least = d > SAME_PLACE_M ? Math.min(least, d) : least;
    }
    return least;
  }

  /** Of the bounding boxes of the fields' sites, metres. */
  static double longestDiagonal(Observations data) {
    return data.parts().stream().mapToDouble(RangeBounds::diagonal).max().orElse(0);
  }

  private static double diagonal(FieldRows part) {
    return Math.hypot(extent(part.x()), extent(part.y()));
  }

  private static double extent(double[] x) {
    return java.util.Arrays.stream(x).max().orElse(0) - java.util.Arrays.stream(x).min().orElse(0);
  }
}
