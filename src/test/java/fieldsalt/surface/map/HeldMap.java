package fieldsalt.surface.map;

import fieldsalt.surface.site.Grid;
import java.io.IOException;
import java.util.List;

/** A map given out as one strip. */
public record HeldMap(SurfaceMap map) implements SurfaceStrips {
  /** One for each map. */
  public static List<SurfaceStrips> of(List<SurfaceMap> maps) {
    return maps.stream().<SurfaceStrips>map(HeldMap::new).toList();
  }

  @Override
  public Grid grid() {
    return map.grid();
  }

  @Override
  public List<String> fields() {
    return map.fields();
  }

  @Override
  public boolean mayExtrapolate() {
    return !map.beyond().isEmpty();
  }

  @Override
  public void forEach(Taker taker) throws IOException {
    taker.take(map);
  }
}
