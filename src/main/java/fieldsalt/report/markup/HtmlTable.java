package fieldsalt.report.markup;

import java.util.List;

/**
 * A table that becomes a list of cards on a narrow screen: each cell carries its column's heading,
 * and roles keep it a table for those who listen to it.
 */
public final class HtmlTable {
  private final String caption;
  private final List<String> columns;

  public HtmlTable(String caption, String... columns) {
    this.caption = caption;
    this.columns = List.of(columns);
  }

  public void write(Markup page, Runnable rows) {
    page.in(
        "table",
        () -> {
          page.line("caption", caption);
          page.in("thead", () -> headings(page), "role", "rowgroup");
          page.in("tbody", rows, "role", "rowgroup");
        },
        "role",
        "table");
  }

  private void headings(Markup page) {
    page.in(
        "tr",
        () -> columns.forEach(c -> page.line("th", c, "scope", "col", "role", "columnheader")),
        "role",
        "row");
  }

  /** A row of plain texts, the first of them its heading. */
  public void row(Markup page, String... cells) {
    page.in(
        "tr",
        () -> {
          header(page, columns.get(0), () -> page.name(cells[0]));
          for (int i = 1; i < cells.length; i++) {
            String text = cells[i];
            cell(page, columns.get(i), () -> page.text(text));
          }
        },
        "role",
        "row");
  }

  public void header(Markup page, String column, Runnable content) {
    page.in("th", content, "scope", "row", "role", "rowheader", "data-column", column);
  }

  public void cell(Markup page, String column, Runnable content) {
    page.in("td", () -> page.in("div", content), "role", "cell", "data-column", column);
  }
}
