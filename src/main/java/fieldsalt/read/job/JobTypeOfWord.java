package fieldsalt.read.job;

import fieldsalt.quantity.DepthRange;
import fieldsalt.read.word.MethodWords;
import fieldsalt.read.word.ReadingUnit;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;

/** Types of job keys that the catalogue names by one word. */
@SuppressWarnings("ImmutableEnumChecker") // the functions hold no state
enum JobTypeOfWord implements JobType {
  TEXT("text", "{\"type\": [\"string\", \"number\"]}", one(word -> word)),
  PATH("the path of a file", string(), one(JobTypeOfWord::path)),
  FLAG("yes or no", "{\"enum\": [\"yes\", \"no\", true, false]}", one(JobTypeOfWord::flag)),
  PATTERN("a regular expression with a group in brackets", string(), one(JobTypeOfWord::pattern)),
  UNIT(
      "dS/m, mS/cm, uS/cm, mmhos/cm, umhos/cm, mS/m, S/m or ppm",
      string(),
      one(word -> ReadingUnit.of(word).orElseThrow(() -> new Refused(word)).label())),
  METHOD(
      "paste, 1:1, 1:2, 1:2.5 or 1:5",
      string(),
      one(word -> MethodWords.parse(word).method().orElseThrow(() -> new Refused(word)).label())),
  CRS(
      "EPSG: and a number, local or auto",
      "{\"type\": \"string\", \"pattern\": \"^(EPSG:[1-9][0-9]{3,5}|local|auto)$\"}",
      one(JobTypeOfWord::crs)),
  TEXT_LIST(
      "a text or a list of texts",
      "{\"anyOf\": [{\"type\": [\"string\", \"number\"]},"
          + " {\"type\": \"array\", \"items\": {\"type\": [\"string\", \"number\"]}}]}",
      (words, list) -> List.copyOf(words)),
  NUMBER_LIST(
      "a list of rising numbers above 0, such as [2, 4, 8]",
      "{\"type\": \"array\", \"items\": {\"type\": \"number\", \"exclusiveMinimum\": 0}}",
      (words, list) -> rising(words)),
  DEPTH_RANGE(
      "two depths in cm, top and bottom, such as [0, 30]",
      "{\"type\": \"array\", \"items\": {\"type\": \"number\", \"minimum\": 0},"
          + " \"minItems\": 2, \"maxItems\": 2}",
      (words, list) -> depth(words));

  private static final double DEEPEST_CM = 1000;

  private final String expected;
  private final String schema;
  private final BiFunction<List<String>, Boolean, Object> value;

  JobTypeOfWord(String expected, String schema, BiFunction<List<String>, Boolean, Object> value) {
    this.expected = expected;
    this.schema = schema;
    this.value = value;
  }

  private static String string() {
    return "{\"type\": \"string\"}";
  }

  private static BiFunction<List<String>, Boolean, Object> one(Function<String, Object> parsed) {
    return (words, list) -> parsed.apply(JobType.only(words, list));
  }

  @Override
  public Object value(List<String> words, boolean list) {
    return value.apply(words, list);
  }

  @Override
  public String expected() {
    return expected;
  }

  @Override
  public String schema() {
    return schema;
  }

  /** Whether it holds a list. */
  boolean isList() {
    return this == TEXT_LIST || this == NUMBER_LIST || this == DEPTH_RANGE;
  }

  private static boolean flag(String word) {
    return switch (word.toLowerCase(Locale.ROOT)) {
      case "yes", "true", "on" -> true;
      case "no", "false", "off" -> false;
      default -> throw new Refused(word);
    };
  }

  private static String pattern(String word) {
    try {
      if (Pattern.compile(word).matcher("").groupCount() >= 1) {
        return word;
      }
    } catch (PatternSyntaxException e) {
      throw new Refused(word);
    }
    throw new Refused(word + " (no group)");
  }

  private static String crs(String word) {
    String plain = word.toUpperCase(Locale.ROOT).replace(" ", "");
    if (plain.equals("LOCAL") || plain.equals("AUTO")) {
      return plain.toLowerCase(Locale.ROOT);
    }
    if (plain.matches("EPSG:[1-9]\\d{3,5}")) {
      return plain;
    }
    throw new Refused(word);
  }

  private static List<Double> rising(List<String> words) {
    List<Double> numbers = words.stream().map(JobTypeOfNumber::decimal).toList();
    for (int i = 0; i < numbers.size(); i++) {
      if (numbers.get(i) <= (i == 0 ? 0 : numbers.get(i - 1))) {
        throw new Refused(String.join(", ", words));
      }
    }
    return numbers;
  }

  private static DepthRange depth(List<String> words) {
    List<Double> cm = words.stream().map(JobTypeOfNumber::decimal).toList();
    if (cm.size() != 2 || !(cm.get(0) >= 0 && cm.get(1) > cm.get(0) && cm.get(1) <= DEEPEST_CM)) {
      throw new Refused(String.join(", ", words));
    }
    return new DepthRange(cm.get(0), cm.get(1));
  }

  static Path path(String word) {
    try {
      return Path.of(word);
    } catch (InvalidPathException e) {
      boolean letters = word.chars().anyMatch(c -> c > 127);
      throw new Refused(
          letters
              ? word + ", letters that this system's character set lacks (set LC_ALL=C.UTF-8)"
              : word);
    }
  }
}
