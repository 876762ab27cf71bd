package fieldsalt.surface.site;

import fieldsalt.geo.PlaceM;
import fieldsalt.read.site.SurveyReading;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * ln ECa of a survey at any place: the 8 nearest readings weighted by inverse distance squared (a
 * metre at least), which smooths the instrument's noise and follows the lines.
 */
public final class SurveyDrift implements Drift {
  private static final int NEAREST = 8;
  private static final double LEAST_SQUARE_M2 = 1;

  /** Farther than this many typical spacings from any reading nothing is known. */
  private static final double TOO_FAR = 8;

  private static final Comparator<SurveyReading> ORDER =
      Comparator.<SurveyReading>comparingDouble(r -> r.place().xM())
          .thenComparingDouble(r -> r.place().yM())
          .thenComparingDouble(SurveyReading::ecaMsPerM);

  private final NeighbourSearch search;
  private final double[] lnEca;
  private final double reachM2;

  /**
   * A survey.
   *
   * @param readings at least one, each greater than 0
   */
  public SurveyDrift(List<SurveyReading> readings) {
    List<SurveyReading> sorted = readings.stream().sorted(ORDER).toList();
    double[] x = sorted.stream().mapToDouble(r -> r.place().xM()).toArray();
    double[] y = sorted.stream().mapToDouble(r -> r.place().yM()).toArray();
    lnEca = sorted.stream().mapToDouble(r -> Math.log(r.ecaMsPerM())).toArray();
    search = new NeighbourSearch(x, y);
    double reach = TOO_FAR * typicalSpacing(x, y);
    reachM2 = Math.max(400, reach * reach);
  }

  /** Median distance of a reading to the farthest of its 8 neighbours: lines are far apart. */
  private double typicalSpacing(double[] x, double[] y) {
    NeighbourSearch.Found found = new NeighbourSearch.Found(Math.min(NEAREST + 1, x.length));
    int step = Math.max(1, x.length / 500);
    double[] spacing = new double[(x.length + step - 1) / step];
    for (int i = 0; i < spacing.length; i++) {
      search.nearest(x[i * step], y[i * step], found);
      spacing[i] = Math.sqrt(found.squaredM2(found.count() - 1));
    }
    Arrays.sort(spacing);
    return spacing[spacing.length / 2];
  }

  @Override
  public String name() {
    return "ECa survey";
  }

  @Override
  public double at(PlaceM place) {
    NeighbourSearch.Found found = new NeighbourSearch.Found(Math.min(NEAREST, lnEca.length));
    search.nearest(place.xM(), place.yM(), found);
    if (found.squaredM2(0) > reachM2) {
      return Double.NaN;
    }
    double sum = 0;
    double weights = 0;
    for (int k = 0; k < found.count(); k++) {
      double weight = 1 / Math.max(LEAST_SQUARE_M2, found.squaredM2(k));
      sum += weight * lnEca[found.index(k)];
      weights += weight;
    }
    return sum / weights;
  }
}
