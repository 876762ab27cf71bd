package fieldsalt.surface.map;

import fieldsalt.surface.site.Grid;
import java.io.IOException;
import java.util.List;

/**
 * The maps of single fields put together on one grid, strip by strip. Where fields overlap the
 * first one has the cell.
 *
 * @param fields names, in order
 * @param maps of these fields and perhaps others, with cells of the grid's size and lines on the
 *     grid's lines
 */
public record JoinedMaps(Grid grid, List<String> fields, List<SurfaceMap> maps)
    implements SurfaceStrips {
  public JoinedMaps {
    List<String> names = List.copyOf(fields);
    maps = maps.stream().filter(m -> names.contains(m.fields().get(0))).toList();
    fields = names;
  }

  @Override
  public boolean mayExtrapolate() {
    return maps.stream().anyMatch(m -> !m.beyond().isEmpty());
  }

  @Override
  public void forEach(Taker taker) throws IOException {
    for (int row = 0; row < grid.rows(); row += MadeStrips.ROWS) {
      taker.take(strip(grid.rows(row, Math.min(MadeStrips.ROWS, grid.rows() - row))));
    }
  }

  private SurfaceMap strip(Grid strip) {
    SurfaceMap whole = SurfaceMap.empty(strip, fields);
    for (int f = 0; f < maps.size(); f++) {
      add(maps.get(f), (short) f, whole);
    }
    return whole;
  }

  private static void add(SurfaceMap map, short field, SurfaceMap strip) {
    Grid own = map.grid();
    Grid grid = strip.grid();
    int down = (int) Math.round((grid.northM() - own.northM()) / grid.cellM());
    int right = (int) Math.round((own.westM() - grid.westM()) / grid.cellM());
    for (int row = Math.max(0, down); row < Math.min(own.rows(), down + grid.rows()); row++) {
      for (int column = 0; column < own.columns(); column++) {
        int from = row * own.columns() + column;
        int to = (row - down) * grid.columns() + right + column;
        if (map.fieldOf()[from] >= 0 && strip.fieldOf()[to] < 0) {
          strip.fieldOf()[to] = field;
          strip.median()[to] = map.median()[from];
          strip.error()[to] = map.error()[from];
          strip.chance()[to] = map.chance()[from];
          strip.beyond().set(to, map.beyond().get(from));
        }
      }
    }
  }
}
