package fieldsalt.read.job;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLParser;
import fieldsalt.finding.InputProblem;
import fieldsalt.finding.InputProblem.Problem;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** Reads YAML as text with line numbers: what a word means is decided by the key, not by YAML. */
final class JobYaml {
  private static final int MAX_DEPTH = 20;

  private static final Pattern TAB = Pattern.compile(" *\\t");

  private final String file;
  private final boolean numbered;
  private final YAMLParser parser;
  private final List<Problem> problems;

  private JobYaml(String file, boolean numbered, YAMLParser parser, List<Problem> problems) {
    this.file = file;
    this.numbered = numbered;
    this.parser = parser;
    this.problems = problems;
  }

  /**
   * The block of keys that a text holds.
   *
   * @param file its name for messages
   * @param numbered whether messages name the line
   * @param problems receives keys that are there twice
   * @throws InputProblem if the text is no YAML or no block of keys
   */
  static JobNode read(String file, boolean numbered, String text, List<Problem> problems) {
    try (YAMLParser parser = new YAMLFactory().createParser(text)) {
      JobYaml reader = new JobYaml(file, numbered, parser, problems);
      if (parser.nextToken() == null) {
        return new JobNode.Nothing(file);
      }
      JobNode node = reader.node(0);
      if (parser.nextToken() != null) {
        throw new InputProblem(
            reader.where(), "a second document", "one block of keys", "Remove the line '---'.");
      }
      return node;
    } catch (JacksonException e) {
      throw tabs(file, text).orElseGet(() -> broken(file, e));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (RuntimeException e) {
      throw e instanceof InputProblem problem ? problem : unreadable(file);
    }
  }

  private static InputProblem unreadable(String file) {
    return new InputProblem(
        file,
        "text that is not YAML",
        "lines of key: value",
        "Start from what the command fieldsalt job prints.");
  }

  /** YAML points at the line before a tab. */
  private static Optional<InputProblem> tabs(String file, String text) {
    List<String> lines = text.lines().toList();
    return IntStream.range(0, lines.size())
        .filter(i -> TAB.matcher(lines.get(i)).lookingAt())
        .mapToObj(
            i ->
                new InputProblem(
                    file + " line " + (i + 1),
                    "a tab before the text",
                    "lines indented with spaces",
                    "Replace the tab by spaces."))
        .findFirst();
  }

  private static InputProblem broken(String file, JacksonException e) {
    int line = e.getLocation() == null ? 0 : e.getLocation().getLineNr();
    String what = e.getOriginalMessage() == null ? "" : e.getOriginalMessage();
    String first = what.lines().findFirst().orElse("").trim().toLowerCase(Locale.ROOT);
    first = first.contains("org.") || first.contains("java") ? "" : first;
    return new InputProblem(
        line > 0 ? file + " line " + line : file,
        "text that is not YAML from here on" + (first.isEmpty() ? "" : " (" + first + ")"),
        "lines of key: value, indented with spaces (no tabs), text with : or # in quotes",
        "Correct this line or the one above it.");
  }

  private String where() {
    return numbered ? file + " line " + parser.currentTokenLocation().getLineNr() : file;
  }

  private JobNode node(int depth) throws IOException {
    if (depth > MAX_DEPTH) {
      throw new InputProblem(
          where(),
          "keys nested deeper than " + MAX_DEPTH,
          "at most four levels",
          "Nest the keys less deeply.");
    }
    if (parser.isCurrentAlias() || parser.getObjectId() != null) {
      throw new InputProblem(
          where(), "a YAML anchor or alias (& or *)", "plain values", "Write the value out.");
    }
    JsonToken token = parser.currentToken();
    if (token == JsonToken.START_OBJECT) {
      return entries(depth);
    }
    if (token == JsonToken.START_ARRAY) {
      return items(depth);
    }
    String text = parser.getText();
    boolean empty = token == JsonToken.VALUE_NULL || text == null;
    return empty ? new JobNode.Nothing(where()) : new JobNode.Scalar(where(), text.strip());
  }

  private JobNode items(int depth) throws IOException {
    String start = where();
    List<JobNode> items = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      items.add(node(depth + 1));
    }
    return new JobNode.Items(start, items);
  }

  private JobNode entries(int depth) throws IOException {
    String start = where();
    Map<String, JobNode> entries = new LinkedHashMap<>();
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      String key = parser.currentName();
      String here = where();
      parser.nextToken();
      if (entries.put(key, node(depth + 1)) != null) {
        problems.add(
            new Problem(
                here, "the key " + key + " a second time", "each key once", "Keep one of them."));
      }
    }
    return new JobNode.Entries(start, entries);
  }
}
