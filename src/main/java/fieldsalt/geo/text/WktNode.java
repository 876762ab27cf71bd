package fieldsalt.geo.text;

import java.text.ParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A node of well-known text: a keyword and its parts, which are nodes, words in quotes, or bare
 * words and numbers (strings).
 */
public record WktNode(String keyword, List<Object> parts) {
  /** A word in quotes. */
  public record Quoted(String word) {
    @Override
    public String toString() {
      return '"' + word.replace("\"", "\"\"") + '"';
    }
  }

  public WktNode {
    keyword = keyword.toUpperCase(Locale.ROOT);
    parts = List.copyOf(parts);
  }

  /** A node of these parts. */
  public static WktNode of(String keyword, Object... parts) {
    return new WktNode(keyword, List.of(parts));
  }

  /**
   * The first node of a text; what stands behind it (a vertical system beside it) is left out.
   *
   * @throws ParseException if brackets or quotes are not closed
   */
  public static WktNode parse(String text) throws ParseException {
    return new Reader(text).node();
  }

  /** The first part, without its quotes. */
  public String name() {
    Object first = parts.isEmpty() ? "" : parts.get(0);
    return first instanceof Quoted quoted ? quoted.word() : first.toString();
  }

  /** The parts that are nodes. */
  public Stream<WktNode> nodes() {
    return parts.stream().filter(WktNode.class::isInstance).map(WktNode.class::cast);
  }

  /** The first part of that keyword. */
  public Optional<WktNode> child(String... keywords) {
    return nodes().filter(n -> List.of(keywords).contains(n.keyword)).findFirst();
  }

  /** The value of the first parameter that has one of these names, written in lower case. */
  public Optional<Double> parameter(String... names) {
    return nodes()
        .filter(n -> n.keyword.equals("PARAMETER"))
        .filter(n -> List.of(names).contains(n.name().toLowerCase(Locale.ROOT).replace(' ', '_')))
        .map(n -> Double.valueOf(n.parts.get(1).toString()))
        .findFirst();
  }

  /**
   * The part at a place as a number.
   *
   * @throws ParseException if it is none
   */
  public double number(int at) throws ParseException {
    try {
      return Double.parseDouble(parts.get(at).toString());
    } catch (NumberFormatException | IndexOutOfBoundsException e) {
      throw new ParseException("no number in " + this, 0);
    }
  }

  /** A copy with the parts of a keyword replaced by others (by none: left out). */
  WktNode with(String replaced, WktNode... others) {
    List<Object> changed = new ArrayList<>();
    boolean done = false;
    for (Object part : parts) {
      boolean hit = part instanceof WktNode node && node.keyword.equals(replaced);
      if (!hit) {
        changed.add(part);
      } else if (!done) {
        changed.addAll(List.of(others));
        done = true;
      }
    }
    return new WktNode(keyword, changed);
  }

  /** A copy with more parts at its end. */
  WktNode and(List<WktNode> more) {
    List<Object> all = new ArrayList<>(parts);
    all.addAll(more);
    return new WktNode(keyword, all);
  }

  @Override
  public String toString() {
    return keyword
        + parts.stream().map(Object::toString).collect(Collectors.joining(",", "[", "]"));
  }

  private static final class Reader {
    private final String text;
    private int at;

    Reader(String text) {
      this.text = text;
    }

    WktNode node() throws ParseException {
      return node(word());
    }

    private WktNode node(String keyword) throws ParseException {
      expect("[(");
      List<Object> parts = new ArrayList<>();
      do {
        parts.add(part());
      } while (next(","));
      expect("])");
      return new WktNode(keyword, parts);
    }

    private Object part() throws ParseException {
      blanks();
      if (next("\"")) {
        return quoted();
      }
      String word = word();
      blanks();
      return at < text.length() && "[(".indexOf(text.charAt(at)) >= 0 ? node(word) : word;
    }

    private Quoted quoted() throws ParseException {
      StringBuilder word = new StringBuilder();
      while (at < text.length()) {
        char c = text.charAt(at++);
        if (c != '"') {
          word.append(c);
        } else if (at < text.length() && text.charAt(at) == '"') {
          word.append(text.charAt(at++));
        } else {
          return new Quoted(word.toString());
        }
      }
      throw new ParseException("a quote is not closed", at);
    }

    private String word() {
      blanks();
      int start = at;
      while (at < text.length() && "[](),\"".indexOf(text.charAt(at)) < 0) {
        at++;
      }
      return text.substring(start, at).strip();
    }

    private void blanks() {
      while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
        at++;
      }
    }

    private boolean next(String one) {
      blanks();
      boolean is = at < text.length() && one.indexOf(text.charAt(at)) >= 0;
      at += is ? 1 : 0;
      return is;
    }

    private void expect(String one) throws ParseException {
      if (!next(one)) {
        throw new ParseException("expected " + one, at);
      }
    }
  }
}
