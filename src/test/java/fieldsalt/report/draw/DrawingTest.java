package fieldsalt.report.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.report.markup.Markup;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.site.Grid;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Base64;
import java.util.BitSet;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.WKTReader;

/** Axes, frames, hatching and the picture of the surface. */
class DrawingTest {
  @Test
  void ticksAreRoundNumbersInsideTheAxis() {
    assertThat(Axis.fromZero("m", 500).ticks()).containsExactly(0.0, 200.0, 400.0);
    assertThat(new Axis("%", 0, 100, false).ticks())
        .containsExactly(0.0, 20.0, 40.0, 60.0, 80.0, 100.0);
    assertThat(Axis.logarithmic("dS/m", 0.2, 9).ticks())
        .containsExactly(0.2, 0.5, 1.0, 2.0, 5.0, 10.0);
    assertThat(Axis.niceStep(0.031)).isCloseTo(0.05, within(1e-12));
    assertThat(Axis.niceStep(200)).isCloseTo(200, within(1e-9));
  }

  @Test
  void anAxisThatDoesNotRiseIsRefused() {
    assertThatThrownBy(() -> new Axis("x", 1, 1, false)).hasMessageContaining("must rise");
    assertThatThrownBy(() -> new Axis("x", 0, 1, true)).hasMessageContaining("must rise");
  }

  @Test
  void aFrameKeepsShapeAndNorthIsUp() throws Exception {
    Geometry shape = new WKTReader().read("POLYGON ((0 0, 1000 0, 1000 500, 0 500, 0 0))");
    Frame frame = Frame.around(List.of(shape));
    assertThat(frame.x(1000) - frame.x(0)).isCloseTo(2 * (frame.y(0) - frame.y(500)), within(1e-9));
    assertThat(frame.y(500)).isLessThan(frame.y(0));
    assertThat(frame.x(0)).isGreaterThan(20);
    assertThat(frame.x(1000)).isLessThan(frame.width() - 20);
  }

  @Test
  void aTallFieldStaysOnTheScreen() throws Exception {
    Geometry shape = new WKTReader().read("POLYGON ((0 0, 50 0, 50 5000, 0 5000, 0 0))");
    Frame frame = Frame.around(List.of(shape));
    assertThat(frame.height()).isLessThanOrEqualTo(760);
    assertThat(frame.y(5000)).isGreaterThan(20);
  }

  @Test
  void holesAreInThePath() throws Exception {
    Geometry shape =
        new WKTReader()
            .read(
                "POLYGON ((0 0, 100 0, 100 100, 0 100, 0 0), (40 40, 40 60, 60 60, 60 40, 40 40))");
    assertThat(Frame.around(List.of(shape)).path(shape).chars().filter(c -> c == 'M').count())
        .isEqualTo(2);
  }

  private static SurfaceMap map(int columns, int rows, float chance) {
    int cells = columns * rows;
    float[] chances = new float[cells];
    float[] median = new float[cells];
    short[] fieldOf = new short[cells];
    for (int i = 0; i < cells; i++) {
      boolean outside = i % columns == 0;
      fieldOf[i] = (short) (outside ? -1 : 0);
      chances[i] = chance;
      median[i] = outside ? Float.NaN : 1 + i % columns;
    }
    return new SurfaceMap(
        new Grid(0, rows * 10, 10, columns, rows),
        List.of("a"),
        fieldOf,
        median,
        median,
        chances,
        new BitSet());
  }

  private static Frame frame() throws Exception {
    return Frame.around(List.of(new WKTReader().read("POLYGON ((0 0, 60 0, 60 40, 0 40, 0 0))")));
  }

  @Test
  void undecidedCellsAreOneBlockAndDecidedOnesNone() throws Exception {
    assertThat(Hatching.undecided(frame(), map(6, 4, 0.5f))).containsOnlyOnce("M").contains("Z");
    assertThat(Hatching.undecided(frame(), map(6, 4, 0.9f))).isEmpty();
  }

  @Test
  void hatchingOfAMillionCellsStaysSmall() throws Exception {
    String path = Hatching.undecided(frame(), map(1200, 900, 0.5f));
    assertThat(path).containsOnlyOnce("M");
  }

  @Test
  void thePictureIsAPngThatOthersRead() throws IOException {
    SurfaceMap map = map(6, 4, 0.5f);
    BufferedImage image = decoded(SurfacePicture.scaledTo(List.of(map)).dataAddress(map));
    assertThat(image.getWidth()).isEqualTo(6);
    assertThat(image.getHeight()).isEqualTo(4);
    assertThat(image.getRGB(0, 0) >>> 24).as("clear outside the field").isZero();
    assertThat(image.getRGB(5, 2))
        .as("darkest where it is highest")
        .isEqualTo(0xFF000000 | fieldsalt.handover.input.Palette.rgb(1));
    assertThat(luminance(image.getRGB(1, 1))).isGreaterThan(luminance(image.getRGB(3, 1)));
  }

  @Test
  void aLargeGridMakesASmallPicture() throws IOException {
    SurfaceMap map = map(2000, 50, 0.5f);
    assertThat(decoded(SurfacePicture.scaledTo(List.of(map)).dataAddress(map)).getWidth())
        .isLessThanOrEqualTo(700);
  }

  private static BufferedImage decoded(String address) throws IOException {
    String prefix = "data:image/png;base64,";
    assertThat(address).startsWith(prefix);
    byte[] png = Base64.getDecoder().decode(address.substring(prefix.length()));
    return ImageIO.read(new ByteArrayInputStream(png));
  }

  private static double luminance(int rgb) {
    return 0.21 * ((rgb >> 16) & 255) + 0.72 * ((rgb >> 8) & 255) + 0.07 * (rgb & 255);
  }

  /** Zones of a field with a long name differ at the end; a name near the edge stays on the map. */
  @Test
  void zonesOfALongNameAreToldApartAndStayOnTheMap() throws Exception {
    assertThat(Labels.shortened("Potrero El Peñón-12")).isEqualTo("Potrero El P…-12");
    Markup page = new Markup();
    Frame frame = frame();
    new Labels(page, frame)
        .zone("Potrero El Peñón-12", new WKTReader().read("POLYGON ((0 0, 8 0, 8 40, 0 40, 0 0))"));
    Matcher x = Pattern.compile("x=\"([0-9.]+)\"").matcher(page.toString());
    assertThat(x.find()).isTrue();
    assertThat(Double.parseDouble(x.group(1))).isBetween(8 * 11.0, frame.width() - 8 * 11.0);
  }

  @Test
  void longNamesAreCutBetweenCharacters() {
    assertThat(Labels.shortened("north-2")).isEqualTo("north-2");
    assertThat(Labels.shortened("\uD83C\uDF3E".repeat(20)))
        .isEqualTo("\uD83C\uDF3E".repeat(15) + "…");
  }
}
