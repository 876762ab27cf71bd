package fieldsalt.quantity;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How the laboratory wetted the soil: the saturated paste, or a soil:water ratio by mass. */
public enum Method {
  PASTE("paste"),
  ONE_TO_ONE("1:1"),
  ONE_TO_TWO("1:2"),
  ONE_TO_TWO_AND_HALF("1:2.5"),
  ONE_TO_FIVE("1:5");

  private final String label;

  Method(String label) {
    this.label = label;
  }

  /** The word of the samples format: {@code paste}, {@code 1:1}, {@code 1:2}, ... */
  public String label() {
    return label;
  }

  /** The method with this label, case-blind; empty if there is none. */
  public static Optional<Method> of(String text) {
    String wanted = text.trim().toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(m -> m.label.equals(wanted)).findFirst();
  }
}
