package fieldsalt.handover.table;

/** Text inside XML 1.0: what the standard forbids is dropped, what it gives meaning is escaped. */
public final class Xml {
  private Xml() {}

  public static String escape(String text) {
    StringBuilder out = new StringBuilder();
    text.codePoints().filter(Xml::isAllowed).forEach(c -> append(out, c));
    return out.toString();
  }

  private static boolean isAllowed(int c) {
    return c == 0x9
        || c == 0xA
        || c == 0xD
        || (c >= 0x20 && c <= 0xD7FF)
        || (c >= 0xE000 && c <= 0xFFFD)
        || c >= 0x10000;
  }

  private static void append(StringBuilder out, int c) {
    switch (c) {
      case '&' -> out.append("&amp;");
      case '<' -> out.append("&lt;");
      case '>' -> out.append("&gt;");
      case '"' -> out.append("&quot;");
      case '\'' -> out.append("&apos;");
      case '\t', '\n', '\r' -> out.append("&#").append(c).append(';');
      default -> out.appendCodePoint(c);
    }
  }
}
