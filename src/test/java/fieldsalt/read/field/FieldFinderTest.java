package fieldsalt.read.field;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.finding.Finding;
import fieldsalt.geo.PlaceM;
import fieldsalt.quantity.Texture;
import fieldsalt.read.file.Notes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** The index of fields against looking at every one of them. */
class FieldFinderTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private final SplittableRandom random = new SplittableRandom(7);
  private final List<FieldBoundary> fields = fields();

  private List<FieldBoundary> fields() {
    List<FieldBoundary> fields = new ArrayList<>();
    for (int i = 0; i < 120; i++) {
      double x = random.nextDouble(1000);
      double y = random.nextDouble(1000);
      Geometry box =
          FACTORY.toGeometry(
              new Envelope(x, x + 20 + random.nextDouble(60), y, y + 20 + random.nextDouble(60)));
      fields.add(
          new FieldBoundary(
              "Field " + i, box, Optional.empty(), Texture.UNKNOWN, OptionalDouble.empty()));
    }
    return fields;
  }

  private Optional<FieldFinder.Hit> byLookingAtAll(PlaceM place) {
    Geometry point = FACTORY.createPoint(new Coordinate(place.xM(), place.yM()));
    FieldFinder.Hit best = null;
    for (FieldBoundary field : fields) {
      double distance = field.shapeM().distance(point);
      if (distance <= FieldFinder.REACH_M && (best == null || distance < best.distanceM())) {
        best = new FieldFinder.Hit(field, distance);
      }
    }
    return Optional.ofNullable(best);
  }

  @Test
  void aPlaceLiesInTheFirstFieldThatCoversItElseInTheNearestWithinReach() {
    FieldFinder finder = new FieldFinder(fields);
    int inside = 0;
    int near = 0;
    for (int i = 0; i < 2000; i++) {
      PlaceM place = new PlaceM(random.nextDouble(1100), random.nextDouble(1100));
      Optional<FieldFinder.Hit> hit = finder.find(place);
      assertThat(hit).isEqualTo(byLookingAtAll(place));
      inside += hit.filter(h -> h.distanceM() == 0).isPresent() ? 1 : 0;
      near += hit.filter(h -> h.distanceM() > 0).isPresent() ? 1 : 0;
    }
    assertThat(inside).isGreaterThan(300);
    assertThat(near).isGreaterThan(300);
  }

  @Test
  void aFieldIsFoundByItsNameWhateverTheCase() {
    FieldFinder finder = new FieldFinder(fields);
    assertThat(finder.named("FIELD 7")).contains(fields.get(7));
    assertThat(finder.named("Field 120")).isEmpty();
    assertThat(finder.fields()).isEqualTo(fields);
  }

  @Test
  void everyPairThatSharesGroundIsNamedOnceInTheFilesOrder() {
    Notes notes = new Notes();
    Overlaps.noteIn(notes, fields);
    List<String> expected = new ArrayList<>();
    for (int i = 0; i < fields.size(); i++) {
      for (int j = i + 1; j < fields.size(); j++) {
        Geometry shared = fields.get(i).shapeM().intersection(fields.get(j).shapeM());
        if (shared.getArea() > 100) {
          expected.add("fields Field " + i + ", Field " + j);
        }
      }
    }
    assertThat(notes.findings()).extracting(Finding::where).isEqualTo(expected);
    assertThat(expected).hasSizeGreaterThan(20);
  }
}
