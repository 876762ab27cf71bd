package fieldsalt.report.markup;

/** A part of the page. */
public interface Section {
  /** Its anchor, e.g. {@code map}. */
  String id();

  /** Its heading. */
  String title();

  /** Writes what stands below the heading. */
  void body(Markup page);

  /** Whether there is anything to show. */
  default boolean isNeeded() {
    return true;
  }

  default void write(Markup page) {
    page.in(
        "section",
        () -> {
          page.line("h2", title(), "id", id());
          body(page);
        },
        "aria-labelledby",
        id());
  }
}
