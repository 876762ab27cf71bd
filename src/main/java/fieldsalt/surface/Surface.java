package fieldsalt.surface;

import fieldsalt.surface.area.JointMeans;
import fieldsalt.surface.fit.SurfaceReport;
import fieldsalt.surface.map.PointDistribution;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.map.SurfaceStrips;
import fieldsalt.surface.next.Proposals;
import fieldsalt.surface.site.Target;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleConsumer;

/** A fitted surface, from which everything downstream is asked. */
public interface Surface {
  /**
   * Every mapped field on a grid of its own, whose lines lie on whole multiples of the cell.
   *
   * @param limitByField above which the chance is wanted
   */
  default List<SurfaceMap> maps(Map<String, Double> limitByField) {
    return mappedFields().stream()
        .map(f -> map(f, limitByField.getOrDefault(f, Double.NaN), done -> {}))
        .toList();
  }

  /**
   * One field on a grid of its own. More than 4 million cells are not held: the map then has cells
   * of twice the size, or three times and so on, and {@link #rasters} has those asked for.
   *
   * @param field a mapped one
   * @param limit above which the chance is wanted
   * @param progress told the share that is done, 0 to 1
   */
  SurfaceMap map(String field, double limit, DoubleConsumer progress);

  /** Side of a cell of the rasters, metres. */
  double cellM();

  /**
   * How many cells of a map are one when the maps of all fields are held, along one side: 1 unless
   * there are more than 4 million in all.
   *
   * @throws fieldsalt.finding.InputProblem if cells are so small that no computer could hold them
   */
  default int heldStep() {
    return 1;
  }

  /**
   * The surface with the cells that were asked for, to be written: the whole ranch on one grid, or
   * one grid a field where the ranch's box is too large.
   *
   * @param maps of all fields; used as they are where they hold every cell asked for
   * @param limitByField as for the maps
   * @param progress told the share that is done while strips are given out
   */
  List<SurfaceStrips> rasters(
      List<SurfaceMap> maps, Map<String, Double> limitByField, DoubleConsumer progress);

  /** Mean and standard deviation of z (ln ECe, or the value itself), micro-scale included. */
  Marginals marginals(List<Target> targets);

  /**
   * Means over areas, each given by up to a few hundred points spread evenly over it. Every area is
   * set against every other: ask field by field.
   */
  JointMeans areaMeans(List<List<Target>> areas);

  /** Distribution of the property at one point, averaged over variograms where that was done. */
  PointDistribution at(Target target);

  /**
   * Distribution of a reading not used for the surface, in the property's own unit: the true value
   * there with micro-scale, the errors it shares with the surface's own rows, and its own error.
   *
   * @param loadings on the offsets of the site readings the surface was fitted to, in their order
   * @param ownVariance of its own error and of offsets that those readings do not have
   */
  PointDistribution reading(Target target, double[] loadings, double ownVariance);

  /**
   * What to measure next: paste re-runs of stored samples or new sites, the one with the largest
   * gain first, each given those before it.
   *
   * @param zones each by points spread evenly over it; may be empty
   * @param hectares of the zones, by which they are weighted
   * @param count how many
   */
  default Proposals measureNext(List<List<Target>> zones, List<Double> hectares, int count) {
    return new Proposals(0, 0, List.of());
  }

  /** Names of the fields that are mapped. */
  List<String> mappedFields();

  /** What was fitted, chosen and validated. */
  SurfaceReport report();

  /** Of z at each of some points. */
  record Marginals(double[] mean, double[] sd) {}
}
