package fieldsalt.read.job;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a job key may hold: turns what the file holds into a value, or says what it expects. */
public sealed interface JobType
    permits JobType.Choice, JobType.Files, JobTypeOfNumber, JobTypeOfWord {
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
    Matcher number = JobTypeOfNumber.PATTERN.matcher(text);
    if (number.matches()) {
      return JobTypeOfNumber.of(number);
    }
    if (text.startsWith("paths(")) {
      return new Files(Integer.parseInt(text.substring(6, text.length() - 1)));
    }
    if (text.contains("|")) {
      return new Choice(List.of(text.split("\\|")));
    }
    return JobTypeOfWord.valueOf(text.toUpperCase(Locale.ROOT).replace('-', '_'));
  }

  /** The one word of a value that is no list. */
  static String only(List<String> words, boolean list) {
    if (list || words.size() != 1) {
      throw new Refused("a list");
    }
    return words.get(0);
  }

  /** One of some words. */
  record Choice(List<String> words) implements JobType {
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
      return words.stream()
          .flatMap(Choice::admitted)
          .collect(Collectors.joining(", ", "{\"enum\": [", "]}"));
    }

    /** A word as editors may write it: digits as a number too, yes and no as a truth value too. */
    private static Stream<String> admitted(String word) {
      String quoted = "\"" + word + "\"";
      if (word.matches("\\d+")) {
        return Stream.of(quoted, word);
      }
      return word.matches("yes|no")
          ? Stream.of(quoted, "" + word.equals("yes"))
          : Stream.of(quoted);
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
      return words.stream().map(JobTypeOfWord::path).toList();
    }

    @Override
    public String schema() {
      return "{\"anyOf\": [{\"type\": \"string\"}, {\"type\": \"array\","
          + " \"items\": {\"type\": \"string\"}, \"minItems\": 1, \"maxItems\": "
          + most
          + "}]}";
    }
  }
}
