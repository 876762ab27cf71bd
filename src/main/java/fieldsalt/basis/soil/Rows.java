package fieldsalt.basis.soil;

import fieldsalt.finding.Finding;
import fieldsalt.quantity.DepthRange;
import fieldsalt.read.sample.Sample;
import java.util.Locale;

/** How rows, numbers and depths are named to people. */
public final class Rows {
  private Rows() {}

  public static String where(Sample sample) {
    return sample.source() + ", site " + sample.id();
  }

  public static Finding finding(String code, Sample sample, String found, String done) {
    return new Finding(code, where(sample), found, done);
  }

  /** Three significant digits, without an exponent where that reads well. */
  public static String number(double value) {
    if (value != 0 && (Math.abs(value) < 0.001 || Math.abs(value) >= 1e6)) {
      return String.format(Locale.ROOT, "%.3g", value);
    }
    double size = Math.abs(value);
    int digits = size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3;
    return String.format(Locale.ROOT, "%." + digits + "f", value);
  }

  public static String depth(DepthRange depth) {
    return plain(depth.topCm()) + "-" + plain(depth.bottomCm()) + " cm";
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? String.valueOf((long) value) : number(value);
  }
}
