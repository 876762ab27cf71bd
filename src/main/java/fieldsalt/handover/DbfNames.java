package fieldsalt.handover;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Names of at most 10 ASCII characters for properties: the name itself if it fits, else without its
 * vowels inside words, else cut; a number keeps them apart.
 */
final class DbfNames {
  private static final int LONGEST = 10;

  private DbfNames() {}

  static List<String> of(List<String> properties) {
    Set<String> used = new HashSet<>();
    List<String> names = new ArrayList<>();
    for (String property : properties) {
      names.add(unused(fitting(property), used));
    }
    return names;
  }

  /** Which short name stands for which property, for people; empty if every name fits. */
  static String described(Layer layer) {
    List<String> properties = Column.of(layer.features()).stream().map(Column::property).toList();
    List<String> names = of(properties);
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < names.size(); i++) {
      if (!names.get(i).equals(properties.get(i))) {
        text.append(text.length() == 0 ? ": " : ", ");
        text.append(names.get(i)).append(" is ").append(properties.get(i));
      }
    }
    return text.toString();
  }

  private static String fitting(String property) {
    String ascii = property.replaceAll("[^A-Za-z0-9_]", "_");
    if (ascii.length() <= LONGEST) {
      return ascii;
    }
    String consonants = ascii.replaceAll("(?<=[A-Za-z])[aeiou](?=[A-Za-z])", "");
    return cut(consonants, LONGEST);
  }

  private static String cut(String name, int length) {
    return name.length() <= length ? name : name.substring(0, length);
  }

  private static String unused(String name, Set<String> used) {
    String candidate = name;
    for (int i = 2; !used.add(candidate.toLowerCase(Locale.ROOT)); i++) {
      String number = "_" + i;
      candidate = cut(name, LONGEST - number.length()) + number;
    }
    return candidate;
  }
}
