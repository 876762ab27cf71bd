package fieldsalt.read.job;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number between limits.
 *
 * @param lowIn whether the lower limit itself is allowed
 * @param highIn whether the upper limit itself is allowed
 * @param auto whether {@code auto} may stand in its place
 */
record JobTypeOfNumber(
    boolean integer,
    Optional<Double> low,
    boolean lowIn,
    Optional<Double> high,
    boolean highIn,
    boolean auto)
    implements JobType {
  static final Pattern PATTERN =
      Pattern.compile("(number|integer)([\\[(])([-0-9.]*),([-0-9.]*)([\\])])( or auto)?");

  private static final Pattern DECIMAL =
      Pattern.compile("[-+]?(\\d+\\.?\\d*|\\.\\d+)([eE][-+]?\\d+)?");

  static JobTypeOfNumber of(Matcher m) {
    return new JobTypeOfNumber(
        m.group(1).equals("integer"),
        limit(m.group(3)),
        m.group(2).equals("["),
        limit(m.group(4)),
        m.group(5).equals("]"),
        m.group(6) != null);
  }

  private static Optional<Double> limit(String text) {
    return Optional.of(text).filter(t -> !t.isEmpty()).map(Double::valueOf);
  }

  static double decimal(String word) {
    double value = DECIMAL.matcher(word).matches() ? Double.parseDouble(word) : Double.NaN;
    if (!Double.isFinite(value)) {
      throw new Refused(word);
    }
    return value;
  }

  @Override
  public String expected() {
    String kind = integer ? "a whole number" : "a number";
    String from = low.map(v -> (lowIn ? " from " : " above ") + plain(v)).orElse("");
    String to = high.map(v -> (highIn ? " to " : " and below ") + plain(v)).orElse("");
    String upTo = low.isEmpty() && !to.isEmpty() ? " up" : "";
    return kind + from + upTo + to + (auto ? ", or auto" : "");
  }

  @Override
  public Object value(List<String> words, boolean list) {
    String word = JobType.only(words, list);
    if (auto && word.equalsIgnoreCase("auto")) {
      return "auto";
    }
    double value = decimal(word);
    boolean inside =
        low.map(l -> lowIn ? value >= l : value > l).orElse(true)
            && high.map(h -> highIn ? value <= h : value < h).orElse(true)
            && (!integer || (value == Math.rint(value) && Math.abs(value) < 1e15));
    if (!inside) {
      throw new Refused(word);
    }
    return integer ? (Object) (long) value : (Object) value;
  }

  @Override
  public String schema() {
    String from = low.map(l -> bound(lowIn ? "minimum" : "exclusiveMinimum", l)).orElse("");
    String to = high.map(h -> bound(highIn ? "maximum" : "exclusiveMaximum", h)).orElse("");
    String number = "{\"type\": \"" + (integer ? "integer" : "number") + "\"" + from + to + "}";
    return auto ? "{\"anyOf\": [{\"const\": \"auto\"}, " + number + "]}" : number;
  }

  private static String bound(String name, double value) {
    return ", \"" + name + "\": " + plain(value);
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
  }
}
