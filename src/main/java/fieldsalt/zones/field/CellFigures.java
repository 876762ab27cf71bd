package fieldsalt.zones.field;

import fieldsalt.classes.ClassScheme;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.site.Grid;
import fieldsalt.zones.lattice.InsideNodes;
import fieldsalt.zones.lattice.Lattice;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/** What the cells of the map say about the zones of one field. */
public final class CellFigures {
  /** Standard normal quantile of 0.8: chances of 0.2 to 0.8 lie within it of the limit. */
  private static final double Q80 = 0.8416212335729143;

  private final FieldMap map;
  private final List<Zone> zones;
  private final float[] secondChance;
  private final ValueScale scale;
  private final int[] cells;
  private final int[] zoneOf;
  private final double[] limits;

  public CellFigures(
      FieldMap map, ClassScheme scheme, List<Zone> zones, Optional<SecondCriterion> second) {
    this.map = map;
    this.zones = zones;
    secondChance = second.map(SecondCriterion::chance).orElse(new float[0]);
    scale = ValueScale.of(map.map());
    limits = scheme.breaks().stream().mapToDouble(scale::apply).toArray();
    cells = known();
    zoneOf = locate();
  }

  /** Cells of the field that have a value; counted first, because there may be millions. */
  private int[] known() {
    float[] median = map.map().median();
    int count = 0;
    for (int i = 0; i < median.length; i++) {
      count += map.isOfField(i) && Float.isFinite(median[i]) ? 1 : 0;
    }
    int[] known = new int[count];
    int at = 0;
    for (int i = 0; at < count; i++) {
      known[at] = i;
      at += map.isOfField(i) && Float.isFinite(median[i]) ? 1 : 0;
    }
    return known;
  }

  private int[] locate() {
    int[] all = new int[map.map().median().length];
    Arrays.fill(all, -1);
    for (int z = 0; z < zones.size(); z++) {
      mark(zones.get(z).shapeM(), z, all);
    }
    return Arrays.stream(cells).map(i -> all[i]).toArray();
  }

  /** Marks the cells whose centre lies in a zone; looks only at the cells of its box. */
  private void mark(Geometry shape, int zone, int[] all) {
    Grid grid = map.map().grid();
    Envelope box = shape.getEnvelopeInternal();
    int west = Math.max(0, (int) Math.floor((box.getMinX() - grid.westM()) / grid.cellM()) - 1);
    int north = Math.max(0, (int) Math.floor((grid.northM() - box.getMaxY()) / grid.cellM()) - 1);
    int east = (int) Math.ceil((box.getMaxX() - grid.westM()) / grid.cellM()) + 1;
    int south = (int) Math.ceil((grid.northM() - box.getMinY()) / grid.cellM()) + 1;
    int columns = Math.min(grid.columns(), east) - west;
    int rows = Math.min(grid.rows(), south) - north;
    if (columns < 1 || rows < 1) {
      return;
    }
    boolean[] inside =
        InsideNodes.of(
            new Lattice(grid.centreX(west), grid.centreY(north), grid.cellM(), columns, rows),
            shape);
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        if (inside[row * columns + column]) {
          all[(north + row) * grid.columns() + west + column] = zone;
        }
      }
    }
  }

  public double varianceExplained() {
    double[] values = Arrays.stream(cells).parallel().mapToDouble(this::value).toArray();
    return ZoneQuality.shareBetween(values, zoneOf);
  }

  private double value(int cell) {
    return scale.apply(map.map().median()[cell]);
  }

  private boolean isUncertain(int cell) {
    double value = value(cell);
    double nearest = Double.POSITIVE_INFINITY;
    for (double limit : limits) {
      nearest = Math.min(nearest, Math.abs(value - limit));
    }
    return nearest < Q80 * map.map().error()[cell] || isUncertain(secondChance, cell);
  }

  private static boolean isUncertain(float[] chance, int cell) {
    return chance.length > 0 && chance[cell] > 0.2f && chance[cell] < 0.8f;
  }

  public double uncertainHa(double fieldHa) {
    long uncertain = Arrays.stream(cells).parallel().filter(this::isUncertain).count();
    return cells.length == 0 ? 0 : fieldHa * uncertain / cells.length;
  }

  public Map<String, ZoneFigures> byZone() {
    int[][] cellsOf = cellsByZone();
    List<ZoneFigures> ofZone =
        IntStream.range(0, zones.size()).parallel().mapToObj(z -> figures(z, cellsOf[z])).toList();
    Map<String, ZoneFigures> figures = new LinkedHashMap<>();
    for (int z = 0; z < zones.size(); z++) {
      figures.put(zones.get(z).name(), ofZone.get(z));
    }
    return figures;
  }

  /** Mean of some values over each zone's cells; of the nearest cell where it holds none. */
  public double[] means(float[] values) {
    int[][] cellsOf = cellsByZone();
    double[] means = new double[zones.size()];
    for (int z = 0; z < means.length; z++) {
      int[] asked = cellsOf[z].length > 0 ? cellsOf[z] : nearestCell(zones.get(z));
      means[z] = mean(values, asked).orElse(0);
    }
    return means;
  }

  private int[][] cellsByZone() {
    int[] count = new int[zones.size()];
    Arrays.stream(zoneOf).filter(z -> z >= 0).forEach(z -> count[z]++);
    int[][] cellsOf = new int[count.length][];
    for (int z = 0; z < count.length; z++) {
      cellsOf[z] = new int[count[z]];
      count[z] = 0;
    }
    for (int k = 0; k < cells.length; k++) {
      if (zoneOf[k] >= 0) {
        cellsOf[zoneOf[k]][count[zoneOf[k]]++] = cells[k];
      }
    }
    return cellsOf;
  }

  private ZoneFigures figures(int zone, int[] mine) {
    int[] asked = mine.length > 0 ? mine : nearestCell(zones.get(zone));
    SurfaceMap m = map.map();
    double chance = mean(m.chance(), asked).orElse(0);
    float[] medians = new float[asked.length];
    for (int k = 0; k < asked.length; k++) {
      medians[k] = m.median()[asked[k]];
    }
    Arrays.sort(medians);
    long uncertain = Arrays.stream(mine).filter(this::isUncertain).count();
    double ha = mine.length == 0 ? 0 : zones.get(zone).areaHa() * uncertain / mine.length;
    return new ZoneFigures(mine.length, chance, ha, middle(medians), mean(secondChance, asked));
  }

  private static double middle(float[] sorted) {
    int n = sorted.length;
    return n == 0 ? 0 : ((double) sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
  }

  private static OptionalDouble mean(float[] values, int[] of) {
    return values.length == 0
        ? OptionalDouble.empty()
        : Arrays.stream(of).mapToDouble(i -> values[i]).filter(Double::isFinite).average();
  }

  private int[] nearestCell(Zone zone) {
    double x = zone.shapeM().getInteriorPoint().getX();
    double y = zone.shapeM().getInteriorPoint().getY();
    int best = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int cell : cells) {
      int row = cell / map.map().grid().columns();
      double dx = map.map().grid().centreX(cell % map.map().grid().columns()) - x;
      double dy = map.map().grid().centreY(row) - y;
      if (dx * dx + dy * dy < least) {
        least = dx * dx + dy * dy;
        best = cell;
      }
    }
    return best < 0 ? new int[0] : new int[] {best};
  }
}
