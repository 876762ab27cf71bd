package fieldsalt.report.markup;

import java.util.Set;

/**
 * Writes HTML and inline SVG. Whatever comes from people goes through {@link #text} or an attribute
 * and is escaped there; elements close themselves, so that the page is always well formed.
 */
public final class Markup {
  private static final Set<String> INLINE =
      Set.of("a", "abbr", "b", "bdi", "em", "i", "span", "strong", "sub", "sup", "tspan");
  private final StringBuilder out = new StringBuilder(1 << 16);

  /** An element around what {@code body} writes; attributes are names and values in turn. */
  public Markup in(String tag, Runnable body, String... attributes) {
    start(tag, attributes).append('>');
    body.run();
    out.append("</").append(tag).append(INLINE.contains(tag) ? ">" : ">\n");
    return this;
  }

  /** An element that holds only text. */
  public Markup line(String tag, String text, String... attributes) {
    return in(tag, () -> text(text), attributes);
  }

  /** A void element of HTML ({@code meta}) or an empty one of SVG ({@code circle}). */
  public Markup empty(String tag, String... attributes) {
    start(tag, attributes).append("/>");
    return this;
  }

  private StringBuilder start(String tag, String... attributes) {
    if (attributes.length % 2 != 0) {
      throw new IllegalArgumentException("attributes come in pairs, in <" + tag + ">");
    }
    out.append('<').append(tag);
    for (int i = 0; i < attributes.length; i += 2) {
      out.append(' ').append(attributes[i]).append("=\"");
      out.append(escaped(attributes[i + 1])).append('"');
    }
    return out;
  }

  /** Text as it is, escaped. */
  public Markup text(String text) {
    out.append(escaped(text));
    return this;
  }

  /** A name that a person gave: escaped, and its writing direction kept to itself. */
  public Markup name(String name) {
    return line("bdi", name);
  }

  /** Our own style sheet and symbols, which need no escaping. */
  public Markup trusted(String markup) {
    out.append(markup);
    return this;
  }

  /** A text in which a name stands at {@code %s}. */
  public Markup textWithName(String template, String name) {
    int at = template.indexOf("%s");
    return text(template.substring(0, at)).name(name).text(template.substring(at + 2));
  }

  @Override
  public String toString() {
    return out.toString();
  }

  static String escaped(String text) {
    StringBuilder safe = new StringBuilder(text.length() + 16);
    text.codePoints().forEach(c -> append(safe, c));
    return safe.toString();
  }

  private static void append(StringBuilder safe, int c) {
    switch (c) {
      case '&' -> safe.append("&amp;");
      case '<' -> safe.append("&lt;");
      case '>' -> safe.append("&gt;");
      case '"' -> safe.append("&quot;");
      case '\'' -> safe.append("&#39;");
      default -> safe.appendCodePoint(mayStand(c) ? c : 0xFFFD);
    }
  }

  private static boolean mayStand(int c) {
    boolean control = c < 0x20 || (c >= 0x7F && c < 0xA0);
    return c == '\t' || c == '\n' || !(control || isBare(c));
  }

  private static boolean isBare(int c) {
    return (c >= 0xD800 && c <= 0xDFFF) || c == 0xFFFE || c == 0xFFFF;
  }
}
