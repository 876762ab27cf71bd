package fieldsalt.handover.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class PaletteTest {
  /** Grey print shows lightness only: it falls all along, and two of seven classes are 10 apart. */
  @Test
  void lightnessFallsAlongTheRamp() {
    double last = 101;
    for (int i = 0; i <= 100; i++) {
      double lightness = Palette.lightness(Palette.rgb(i / 100.0));
      assertThat(lightness).isLessThan(last);
      last = lightness;
    }
    List<String> seven = Palette.classes(7);
    for (int i = 1; i < 7; i++) {
      assertThat(lightness(seven.get(i - 1)) - lightness(seven.get(i))).isGreaterThan(9);
    }
  }

  private static double lightness(String hex) {
    return Palette.lightness(Integer.parseInt(hex.substring(1), 16));
  }

  /** White is 100, mid grey #777777 is 50.03 (CIE 1976 L*, sRGB, D65). */
  @Test
  void lightnessIsThatOfCie() {
    assertThat(Palette.lightness(0xFFFFFF))
        .isEqualTo(100, org.assertj.core.api.Assertions.within(0.005));
    assertThat(Palette.lightness(0x777777))
        .isEqualTo(50.03, org.assertj.core.api.Assertions.within(0.005));
  }
}
