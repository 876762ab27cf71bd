package fieldsalt.handover.input;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * The one ramp of the product, pale to dark: dry sand, ochre, clay, plum, night. Lightness falls
 * evenly, so that it reads in grey print and whatever colours the reader sees; hue only helps.
 */
public final class Palette {
  private static final int[] ANCHORS = {0xF6EFDC, 0xE6C98F, 0xCB9158, 0xA25B4E, 0x6A3555, 0x2A1B40};

  private Palette() {}

  /**
   * The colour at a place on the ramp.
   *
   * @param share 0 is the palest, 1 the darkest; what lies outside is taken as the nearer end
   * @return red, green and blue as 0xRRGGBB
   */
  public static int rgb(double share) {
    double at = Math.min(1, Math.max(0, share)) * (ANCHORS.length - 1);
    int left = Math.min(ANCHORS.length - 2, (int) at);
    double part = at - left;
    return mix(ANCHORS[left], ANCHORS[left + 1], part);
  }

  private static int mix(int from, int to, double part) {
    return channel(from, to, part, 16) | channel(from, to, part, 8) | channel(from, to, part, 0);
  }

  private static int channel(int from, int to, double part, int shift) {
    int a = (from >> shift) & 0xFF;
    int b = (to >> shift) & 0xFF;
    return (int) Math.round(a + (b - a) * part) << shift;
  }

  /** As {@link #rgb}, as {@code #rrggbb}. */
  public static String hex(double share) {
    return String.format(Locale.ROOT, "#%06x", rgb(share));
  }

  /** One colour a class, the lowest palest; a single class takes the second of five. */
  public static List<String> classes(int count) {
    if (count == 1) {
      return List.of(hex(0.25));
    }
    return IntStream.range(0, count).mapToObj(i -> hex(i / (double) (count - 1))).toList();
  }

  /** CIE 1976 lightness, 0 to 100, of an sRGB colour. */
  static double lightness(int rgb) {
    double y =
        0.2126 * linear((rgb >> 16) & 0xFF)
            + 0.7152 * linear((rgb >> 8) & 0xFF)
            + 0.0722 * linear(rgb & 0xFF);
    return y > 0.008856 ? 116 * Math.cbrt(y) - 16 : 903.3 * y;
  }

  private static double linear(int channel) {
    double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }
}
