package fieldsalt.read.job;

import fieldsalt.read.table.ColumnNames;
import fieldsalt.read.word.MethodWords;
import fieldsalt.read.word.NearestWord;
import java.util.Optional;

/** Names that the user writes where the catalogue of keys has a placeholder. */
final class PlaceholderName {
  private PlaceholderName() {}

  /** The name as it is kept; empty if it is none for this placeholder. */
  static Optional<String> canonical(String placeholder, String name) {
    return switch (placeholder) {
      case "{method}" -> MethodWords.parse(name).method().map(fieldsalt.quantity.Method::label);
      case "{column}" -> ColumnNames.ofOurs(name);
      default -> name.isBlank() ? Optional.empty() : Optional.of(name.strip());
    };
  }

  static String expected(String placeholder) {
    return switch (placeholder) {
      case "{method}" -> "a method: paste, 1:1, 1:2, 1:2.5 or 1:5 (in quotes)";
      case "{column}" -> "one of our names for a column: " + String.join(", ", ColumnNames.ours());
      default -> "a name";
    };
  }

  static String remedy(String placeholder, String name) {
    return placeholder.equals("{column}")
        ? "Did you mean " + NearestWord.of(name, ColumnNames.ours()).orElse("") + "?"
        : "Write a name.";
  }
}
