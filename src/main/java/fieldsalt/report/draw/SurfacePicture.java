package fieldsalt.report.draw;

import fieldsalt.handover.input.Palette;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.site.Grid;
import java.util.Base64;
import java.util.List;

/** The median surface as a picture in the product's ramp, on one scale of ln ECe for the ranch. */
public final class SurfacePicture {
  private static final int SHADES = 255;
  private static final int WIDEST = 700;
  private final double least;
  private final double most;

  private SurfacePicture(double least, double most) {
    this.least = least;
    this.most = most > least ? most : least * 1.01;
  }

  /** The scale that fits all maps of a ranch, from the smallest to the largest median. */
  public static SurfacePicture scaledTo(List<SurfaceMap> maps) {
    double least = Double.POSITIVE_INFINITY;
    double most = 0;
    for (SurfaceMap map : maps) {
      for (float value : map.median()) {
        if (value > 0) {
          least = Math.min(least, value);
          most = Math.max(most, value);
        }
      }
    }
    return new SurfacePicture(Double.isInfinite(least) ? 1 : least, most);
  }

  public double least() {
    return least;
  }

  public double most() {
    return most;
  }

  /** Place of a value on the ramp, 0 to 1. */
  double share(double ece) {
    return Math.min(1, Math.max(0, Math.log(ece / least) / Math.log(most / least)));
  }

  /** The map as a {@code data:} address of a PNG; outside the fields it is clear. */
  public String dataAddress(SurfaceMap map) {
    Grid grid = map.grid();
    int step = Math.max(1, (grid.columns() + WIDEST - 1) / WIDEST);
    int columns = (grid.columns() + step - 1) / step;
    int rows = (grid.rows() + step - 1) / step;
    byte[] shades = new byte[columns * rows];
    for (int i = 0; i < shades.length; i++) {
      int row = Math.min(grid.rows() - 1, i / columns * step + step / 2);
      int column = Math.min(grid.columns() - 1, i % columns * step + step / 2);
      shades[i] = shade(map.median()[row * grid.columns() + column]);
    }
    byte[] png = Png.indexed(columns, rows, shades, palette());
    return "data:image/png;base64," + Base64.getEncoder().encodeToString(png);
  }

  private byte shade(float ece) {
    return (byte) (ece > 0 ? 1 + Math.round(share(ece) * (SHADES - 1)) : 0);
  }

  private static int[] palette() {
    int[] palette = new int[SHADES + 1];
    for (int i = 1; i <= SHADES; i++) {
      palette[i] = Palette.rgb((i - 1) / (double) (SHADES - 1));
    }
    return palette;
  }
}
