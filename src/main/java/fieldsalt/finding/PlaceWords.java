package fieldsalt.finding;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;

/** A place as people read it: {@code samples.csv rows 4-7, site N01}, {@code field north}. */
public final class PlaceWords {
  private PlaceWords() {}

  /** The words of a place. */
  public static String of(Place place) {
    if (place instanceof Place.Rows rows) {
      String site = rows.site().isEmpty() ? "" : ", site " + rows.site();
      return rows.file() + " " + ranges(rows.word(), rows.rows()) + site;
    }
    if (place instanceof Place.Column column) {
      return column.file() + " column '" + column.header() + "'";
    }
    if (place instanceof Place.InFile in) {
      return in.part().isEmpty() ? in.file() : in.file() + ", " + in.part();
    }
    if (place instanceof Place.Laboratory laboratory) {
      return of(laboratory);
    }
    if (place instanceof Place.Site site) {
      return site.composite()
          ? "composite " + site.id() + ", field " + site.field()
          : "site " + site.id();
    }
    if (place instanceof Place.Fields fields) {
      String part = fields.part().isEmpty() ? "" : ", " + fields.part();
      String word = fields.names().size() == 1 ? "field " : "fields ";
      return word + String.join(", ", fields.names()) + part;
    }
    if (place instanceof Place.Source source) {
      return source.name();
    }
    if (place instanceof Place.Key key) {
      return key.key();
    }
    if (place instanceof Place.OfProperty of) {
      return of.property() + ": " + of(of.place());
    }
    return "ranch";
  }

  private static String of(Place.Laboratory place) {
    List<String> parts = new ArrayList<>();
    if (!place.file().isEmpty()) {
      parts.add(place.file());
    }
    if (!place.name().isEmpty() || parts.isEmpty()) {
      parts.add("laboratory " + place.name());
    }
    if (!place.method().isEmpty()) {
      parts.add(place.method());
    }
    return String.join(", ", parts);
  }

  /** Row numbers as people write them: {@code row 4}, {@code rows 2-40, 57 (40 rows)}. */
  public static String ranges(String word, SortedSet<Integer> rows) {
    List<String> parts = new ArrayList<>();
    int from = Integer.MIN_VALUE;
    int to = Integer.MIN_VALUE;
    for (int row : rows) {
      if (row != to + 1 && from != Integer.MIN_VALUE) {
        parts.add(range(from, to));
      }
      from = row == to + 1 ? from : row;
      to = row;
    }
    parts.add(range(from, to));
    boolean one = rows.size() == 1;
    String count = rows.size() > 3 ? " (" + rows.size() + " " + word + "s)" : "";
    return word + (one ? " " : "s ") + String.join(", ", parts) + count;
  }

  private static String range(int from, int to) {
    return from == to ? String.valueOf(from) : from + "-" + to;
  }
}
