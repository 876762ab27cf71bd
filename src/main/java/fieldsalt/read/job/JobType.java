package fieldsalt.read.job;

import fieldsalt.quantity.DepthRange;
import fieldsalt.read.word.MethodWords;
import fieldsalt.read.word.ReadingUnit;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;

/** What a job key may hold: turns what stands in the file into a value, or says what it expects. */
public sealed interface JobType {
  /** In words, for messages and the template. */
  String expected();

  /**
   * The value of a list of words as written (a single word where the file has no list).
   *
   * @throws Refused if the words are not of this type
   */
  Object value(List<String> words, boolean list);

  /** The JSON Schema that admits this type, as JSON text. */
  String schema();

  /** The words are not of the type; the message says what is wrong, if more than the kind. */
  final class Refused extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Refused(String message) {
      super(message);
    }
  }

  /** The type that the catalogue writes so. */
  static JobType of(String text) {
    Matcher number = Numeric.PATTERN.matcher(text);
    if (number.matches()) {
      return Numeric.of(number);
    }
    if (text.startsWith("paths(")) {
      return new Files(Integer.parseInt(text.substring(6, text.length() - 1)));
    }
    if (text.contains("|")) {
      return new Choice(List.of(text.split("\\|")));
    }
    return Word.valueOf(text.toUpperCase(Locale.ROOT).replace('-', '_'));
  }

  private static String only(List<String> words, boolean list) {
    if (list || words.size() != 1) {
      throw new Refused("a list");
    }
    return words.get(0);
  }

  private static double decimal(String word) {
    try {
      double value = Double.parseDouble(word);
      if (Double.isFinite(value) && word.matches("[-+0-9.eE]+")) {
        return value;
      }
    } catch (NumberFormatException e) {
      throw new Refused(word);
    }
    throw new Refused(word);
  }

  /** Types that one word names. */
  enum Word implements JobType {
    TEXT("text") {
      @Override
      Object parsed(String word) {
        return word;
      }
    },
    PATH("the path of a file") {
      @Override
      Object parsed(String word) {
        return path(word);
      }
    },
    FLAG("yes or no") {
      @Override
      Object parsed(String word) {
        return switch (word.toLowerCase(Locale.ROOT)) {
          case "yes", "true", "on" -> true;
          case "no", "false", "off" -> false;
          default -> throw new Refused(word);
        };
      }
    },
    PATTERN("a regular expression with a group in brackets") {
      @Override
      Object parsed(String word) {
        try {
          if (Pattern.compile(word).matcher("").groupCount() >= 1) {
            return word;
          }
        } catch (PatternSyntaxException e) {
          throw new Refused(word);
        }
        throw new Refused(word + " (no group)");
      }
    },
    UNIT("dS/m, mS/cm, uS/cm, mmhos/cm, umhos/cm, mS/m, S/m or ppm") {
      @Override
      Object parsed(String word) {
        return ReadingUnit.of(word).orElseThrow(() -> new Refused(word)).label();
      }
    },
    METHOD("paste, 1:1, 1:2, 1:2.5 or 1:5") {
      @Override
      Object parsed(String word) {
        return MethodWords.parse(word).method().orElseThrow(() -> new Refused(word)).label();
      }
    },
    CRS("EPSG: and a number, local or auto") {
      @Override
      Object parsed(String word) {
        String plain = word.toUpperCase(Locale.ROOT).replace(" ", "");
        if (plain.equals("LOCAL") || plain.equals("AUTO")) {
          return plain.toLowerCase(Locale.ROOT);
        }
        if (plain.matches("EPSG:[1-9]\\d{3,5}")) {
          return plain;
        }
        throw new Refused(word);
      }
    },
    TEXT_LIST("a text or a list of texts") {
      @Override
      public Object value(List<String> words, boolean list) {
        return List.copyOf(words);
      }

      @Override
      Object parsed(String word) {
        return word;
      }
    },
    NUMBER_LIST("a list of rising numbers above 0, such as [2, 4, 8]") {
      @Override
      public Object value(List<String> words, boolean list) {
        List<Double> numbers = words.stream().map(JobType::decimal).toList();
        for (int i = 0; i < numbers.size(); i++) {
          if (numbers.get(i) <= (i == 0 ? 0 : numbers.get(i - 1))) {
            throw new Refused(String.join(", ", words));
          }
        }
        return numbers;
      }

      @Override
      Object parsed(String word) {
        return decimal(word);
      }
    },
    DEPTH_RANGE("two depths in cm, top and bottom, such as [0, 30]") {
      @Override
      public Object value(List<String> words, boolean list) {
        if (words.size() != 2) {
          throw new Refused(String.join(", ", words));
        }
        double top = decimal(words.get(0));
        double bottom = decimal(words.get(1));
        if (!(top >= 0 && bottom > top && bottom <= 1000)) {
          throw new Refused(String.join(", ", words));
        }
        return new DepthRange(top, bottom);
      }

      @Override
      Object parsed(String word) {
        return word;
      }
    };

    private final String expected;

    Word(String expected) {
      this.expected = expected;
    }

    abstract Object parsed(String word);

    @Override
    public Object value(List<String> words, boolean list) {
      return parsed(only(words, list));
    }

    @Override
    public String expected() {
      return expected;
    }

    @Override
    public String schema() {
      return switch (this) {
        case FLAG -> "{\"enum\": [\"yes\", \"no\", true, false]}";
        case TEXT_LIST ->
            "{\"anyOf\": [{\"type\": [\"string\", \"number\"]},"
                + " {\"type\": \"array\", \"items\": {\"type\": [\"string\", \"number\"]}}]}";
        case NUMBER_LIST ->
            "{\"type\": \"array\", \"items\": {\"type\": \"number\", \"exclusiveMinimum\": 0}}";
        case DEPTH_RANGE ->
            "{\"type\": \"array\", \"items\": {\"type\": \"number\", \"minimum\": 0},"
                + " \"minItems\": 2, \"maxItems\": 2}";
        case CRS -> "{\"type\": \"string\", \"pattern\": \"^(EPSG:[1-9][0-9]{3,5}|local|auto)$\"}";
        case TEXT -> "{\"type\": [\"string\", \"number\"]}";
        default -> "{\"type\": \"string\"}";
      };
    }

    private static Path path(String word) {
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

  /** One of some words. */
  public record Choice(List<String> words) implements JobType {
    public Choice {
      words = List.copyOf(words);
    }

    @Override
    public String expected() {
      return "one of " + String.join(", ", words);
    }

    @Override
    public Object value(List<String> given, boolean list) {
      String word = only(given, list);
      return words.stream()
          .filter(word::equalsIgnoreCase)
          .findFirst()
          .orElseThrow(() -> new Refused(word));
    }

    @Override
    public String schema() {
      List<String> admitted = new ArrayList<>();
      for (String word : words) {
        admitted.add("\"" + word + "\"");
        if (word.matches("\\d+")) {
          admitted.add(word);
        }
        if (word.equals("yes") || word.equals("no")) {
          admitted.add(String.valueOf(word.equals("yes")));
        }
      }
      return "{\"enum\": [" + String.join(", ", admitted) + "]}";
    }
  }

  /** Up to a number of files. */
  record Files(int most) implements JobType {
    @Override
    public String expected() {
      return "the path of a file, or a list of at most " + most;
    }

    @Override
    public Object value(List<String> words, boolean list) {
      if (words.isEmpty() || words.size() > most) {
        throw new Refused(words.size() + " files");
      }
      return words.stream().map(Word::path).toList();
    }

    @Override
    public String schema() {
      return "{\"anyOf\": [{\"type\": \"string\"}, {\"type\": \"array\","
          + " \"items\": {\"type\": \"string\"}, \"minItems\": 1, \"maxItems\": "
          + most
          + "}]}";
    }
  }

  /** A number between limits. */
  record Numeric(
      boolean integer,
      Optional<Double> low,
      boolean lowIn,
      Optional<Double> high,
      boolean highIn,
      boolean auto)
      implements JobType {
    static final Pattern PATTERN =
        Pattern.compile("(number|integer)([\\[(])([-0-9.]*),([-0-9.]*)([\\])])( or auto)?");

    private static Numeric of(Matcher m) {
      return new Numeric(
          m.group(1).equals("integer"),
          limit(m.group(3)),
          m.group(2).equals("["),
          limit(m.group(4)),
          m.group(5).equals("]"),
          m.group(6) != null);
    }

    private static Optional<Double> limit(String text) {
      return text.isEmpty() ? Optional.empty() : Optional.of(Double.valueOf(text));
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
      String word = only(words, list);
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
      String bounds =
          low.map(l -> ", \"" + (lowIn ? "minimum" : "exclusiveMinimum") + "\": " + plain(l))
                  .orElse("")
              + high.map(
                      h -> ", \"" + (highIn ? "maximum" : "exclusiveMaximum") + "\": " + plain(h))
                  .orElse("");
      String number = "{\"type\": \"" + (integer ? "integer" : "number") + "\"" + bounds + "}";
      return auto ? "{\"anyOf\": [{\"const\": \"auto\"}, " + number + "]}" : number;
    }

    private static String plain(double value) {
      return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
    }
  }
}
