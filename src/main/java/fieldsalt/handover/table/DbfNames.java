package fieldsalt.handover.table;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Names of at most 10 ASCII characters for properties: the name itself if it fits, else with the
 * trade's long words shortened, else without vowels inside words, else cut; a number keeps two
 * apart.
 */
public final class DbfNames {
  private static final int LONGEST = 10;
  private static final Map<String, String> SHORT_WORDS =
      Map.of(
          "leaching",
          "lch",
          "requirement",
          "req",
          "status",
          "stat",
          "irrigation",
          "irr",
          "target",
          "tg",
          "gypsum",
          "gyp",
          "reclamation",
          "rec");
  private static final Map<String, String> SHORTEST_WORDS = Map.of("low", "lo", "high", "hi");

  private DbfNames() {}

  public static List<String> of(List<String> properties) {
    Set<String> used = new HashSet<>();
    List<String> names = new ArrayList<>();
    for (String property : properties) {
      names.add(unused(fitting(property), used));
    }
    return names;
  }

  /** Which short name stands for which property, for people; empty if every name fits. */
  public static String described(Layer layer) {
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
    String shorter = words(ascii, SHORT_WORDS);
    String shortest = words(shorter.replace("t_ha", "tha"), SHORTEST_WORDS);
    String consonants = shortest.replaceAll("(?<=[A-Za-z])[aeiou](?=[A-Za-z])", "");
    return Stream.of(ascii, shorter, shortest)
        .filter(name -> name.length() <= LONGEST)
        .findFirst()
        .orElse(cut(consonants, LONGEST));
  }

  private static String words(String name, Map<String, String> shortened) {
    return Arrays.stream(name.split("_"))
        .map(word -> shortened.getOrDefault(word, word))
        .collect(Collectors.joining("_"));
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
