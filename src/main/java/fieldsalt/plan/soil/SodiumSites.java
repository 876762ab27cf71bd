package fieldsalt.plan.soil;

import fieldsalt.geo.PlaceM;
import fieldsalt.read.sample.Sample;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;

/**
 * The sites at which sodium should be measured first: the one nearest the middle of the zone, then
 * the one farthest from those chosen, so that few samples speak for the whole zone.
 */
public final class SodiumSites {
  private static final int MOST = 3;

  private SodiumSites() {}

  /** Ids of at most three sites of the zone that have a place and no sodium, best first. */
  public static List<String> of(ZoneGround ground, List<Sample> samples) {
    Map<String, PlaceM> places = inZone(ground.zone().shapeM(), ground.zone().field(), samples);
    List<String> chosen = new ArrayList<>();
    Coordinate centre = ground.zone().shapeM().getCentroid().getCoordinate();
    List<PlaceM> taken = new ArrayList<>();
    while (chosen.size() < MOST && !places.isEmpty()) {
      String next = best(places, taken, new PlaceM(centre.x, centre.y));
      taken.add(places.remove(next));
      chosen.add(next);
    }
    return List.copyOf(chosen);
  }

  private static Map<String, PlaceM> inZone(Geometry shape, String field, List<Sample> samples) {
    Map<String, PlaceM> places = new TreeMap<>();
    IndexedPointInAreaLocator inside = new IndexedPointInAreaLocator(shape);
    for (Sample s : samples) {
      if (s.field().equals(field) && s.place().isPresent()) {
        PlaceM place = s.place().get();
        Coordinate at = new Coordinate(place.xM(), place.yM());
        if (inside.locate(at) != Location.EXTERIOR) {
          places.put(s.id(), place);
        }
      }
    }
    return places;
  }

  private static String best(Map<String, PlaceM> places, List<PlaceM> taken, PlaceM centre) {
    Comparator<Map.Entry<String, PlaceM>> by =
        taken.isEmpty()
            ? Comparator.comparingDouble(e -> e.getValue().distanceM(centre))
            : Comparator.comparingDouble(e -> -nearest(e.getValue(), taken));
    return places.entrySet().stream().min(by).map(Map.Entry::getKey).orElseThrow();
  }

  private static double nearest(PlaceM place, List<PlaceM> taken) {
    return taken.stream().mapToDouble(place::distanceM).min().orElseThrow();
  }

  /** Texture of the zone's own samples, else the field's. */
  public static FieldSoil soilOf(ZoneGround ground, FieldSoil field, List<Sample> samples) {
    Map<String, PlaceM> inside = inZone(ground.zone().shapeM(), ground.zone().field(), samples);
    List<Sample> own =
        samples.stream()
            .filter(s -> s.field().equals(ground.zone().field()) && inside.containsKey(s.id()))
            .toList();
    return field.withTexture(FieldSoil.commonest(own, field.texture()));
  }
}
