package fieldsalt.sample;

import fieldsalt.geo.PlaceM;
import fieldsalt.quantity.Method;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.distance.DistanceOp;

/**
 * What goes wrong in real sheets, put into clean rows: a row that stands twice, a reading without a
 * unit, a site 3 m outside its field, a reading in µS/cm under the unit dS/m, and a cell "ND".
 */
final class Blemishes {
  private final InventedRanch ranch;
  private final List<LabRow> rows;

  private Blemishes(InventedRanch ranch) {
    this.ranch = ranch;
    this.rows = new ArrayList<>(ranch.rows());
  }

  static List<LabRow> of(InventedRanch ranch) {
    Blemishes blemishes = new Blemishes(ranch);
    blemishes.siteOutside("creek", 3);
    blemishes.unitSlip();
    blemishes.notDetermined();
    blemishes.noUnit();
    blemishes.standsTwice();
    return List.copyOf(blemishes.rows);
  }

  private void siteOutside(String field, double byM) {
    var ring = ranch.field(field).shapeM().getExteriorRing();
    LabRow nearest =
        rows.stream()
            .filter(r -> r.field().equals(field))
            .min(Comparator.comparingDouble(r -> ring.distance(point(r.place()))))
            .orElseThrow();
    Coordinate edge = DistanceOp.nearestPoints(ring, point(nearest.place()))[0];
    double dx = edge.x - nearest.place().xM();
    double dy = edge.y - nearest.place().yM();
    double step = byM / Math.hypot(dx, dy);
    PlaceM outside = new PlaceM(edge.x + dx * step, edge.y + dy * step);
    rows.replaceAll(r -> r.id().equals(nearest.id()) ? r.at(outside) : r);
  }

  private static org.locationtech.jts.geom.Point point(PlaceM place) {
    return new GeometryFactory().createPoint(new Coordinate(place.xM(), place.yM()));
  }

  /** The reading nearest 4 dS/m of the garden's topsoil: 4000, which is µS/cm, under dS/m. */
  private void unitSlip() {
    LabRow row =
        rows.stream()
            .filter(r -> r.field().equals("garden") && r.depth().topCm() == 0)
            .min(Comparator.comparingDouble(r -> Math.abs(Math.log(r.dSPerM() / 4))))
            .orElseThrow();
    rows.set(rows.indexOf(row), row.withEc("4000"));
  }

  private void notDetermined() {
    int at = nth(8, r -> r.method() == Method.ONE_TO_FIVE && r.depth().topCm() == 60);
    rows.set(at, rows.get(at).withEc("ND"));
  }

  private void noUnit() {
    int at = nth(5, r -> r.method() == Method.PASTE && r.field().equals("north"));
    rows.set(at, rows.get(at).withUnit(""));
  }

  private void standsTwice() {
    int at = nth(20, r -> r.method() == Method.ONE_TO_FIVE && r.depth().topCm() == 0);
    rows.add(at + 1, rows.get(at));
  }

  private int nth(int n, Predicate<LabRow> which) {
    int seen = 0;
    for (int i = 0; i < rows.size(); i++) {
      if (which.test(rows.get(i)) && ++seen == n) {
        return i;
      }
    }
    throw new IllegalStateException("fewer than " + n + " such rows");
  }
}
