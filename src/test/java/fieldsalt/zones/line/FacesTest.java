package fieldsalt.zones.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.zones.Given;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

class FacesTest {
  private static final Polygon SQUARE =
      (Polygon) Given.wkt("POLYGON ((0 0, 100 0, 100 100, 0 100, 0 0))");

  private static LabelledLine line(String wkt, int left, int right) {
    return new LabelledLine(Given.wkt(wkt).getCoordinates(), left, right);
  }

  private static Faces faces(LabelledLine... lines) {
    return Faces.of(
        Faces.outlineOf(SQUARE, LabelledLine.ANY), List.of(lines), Optional.empty(), 1000);
  }

  private static double area(Faces faces) {
    return faces.faces().stream().map(Faces.Face::shape).mapToDouble(Geometry::getArea).sum();
  }

  @Test
  void aLineThatRunsAlongTheOutlineForAWhileStillCuts() {
    Faces faces = faces(line("LINESTRING (0 40, 0 50, 100 50)", 1, 0));
    assertThat(faces.faces()).hasSize(2);
    assertThat(area(faces)).isCloseTo(10_000, within(1e-9));
    assertThat(faces.faces()).extracting(Faces.Face::label).containsExactlyInAnyOrder(0, 1);
    assertThat(faces.contacts()).containsExactly(new Faces.Contact(0, 1, 100));
  }

  @Test
  void twoLinesThatFallTogetherAreOneEdge() {
    Faces faces =
        faces(
            line("LINESTRING (0 50, 40 50, 60 50, 100 80)", 1, 0),
            line("LINESTRING (0 20, 40 50, 60 50, 100 20)", 0, 2));
    assertThat(faces.faces()).hasSize(4);
    assertThat(area(faces)).isCloseTo(10_000, within(1e-9));
  }

  @Test
  void aLineThatRunsBackOnItselfLeavesNoTrace() {
    Faces faces = faces(line("LINESTRING (0 50, 50 50, 50 70, 50 50, 100 50)", 1, 0));
    assertThat(faces.faces()).hasSize(2);
    assertThat(area(faces)).isCloseTo(10_000, within(1e-9));
  }
}
