package fieldsalt.plan.word;

import fieldsalt.quantity.Measure;
import fieldsalt.quantity.UnitSystem;
import java.util.List;

/**
 * A sentence for people whose numbers are kept apart, so that it can be told in either system of
 * units.
 *
 * @param code stable, lower case with hyphens, e.g. {@code no-gypsum-saline}
 * @param template the sentence with {@code {0}}, {@code {1}} ... where the numbers go
 */
public record Sentence(String code, String template, List<Measure> numbers) {
  public Sentence {
    numbers = List.copyOf(numbers);
  }

  public static Sentence of(String code, String template, Measure... numbers) {
    return new Sentence(code, template, List.of(numbers));
  }

  /** The sentence in the units of a system. */
  public String text(UnitSystem system) {
    String text = template;
    for (int k = 0; k < numbers.size(); k++) {
      text = text.replace("{" + k + "}", numbers.get(k).text(system));
    }
    return text;
  }
}
