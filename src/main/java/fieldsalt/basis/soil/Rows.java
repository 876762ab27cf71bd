package fieldsalt.basis.soil;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.quantity.DepthRange;
import fieldsalt.read.sample.Sample;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/** How rows, numbers and depths are named to people. */
public final class Rows {
  private Rows() {}

  /** The row of a sample. */
  public static Place place(Sample sample) {
    return new Place.Rows(
        sample.source().file(),
        sample.source().word(),
        new TreeSet<>(Set.of(sample.source().row())),
        sample.id(),
        sample.field().isEmpty() ? Set.of() : Set.of(sample.field()));
  }

  public static Finding finding(Code code, Sample sample, String found, String done) {
    return new Finding(code, place(sample), found, done);
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
