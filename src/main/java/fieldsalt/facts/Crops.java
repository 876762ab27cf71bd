package fieldsalt.facts;

import fieldsalt.finding.InputProblem;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The crop table: crops with threshold and slope, crops with a rating only, and the numbers that
 * other sources give for the same crop. Nothing is decided here but which row a name means.
 */
public final class Crops {
  /** Bare names for which the tables have grain and other uses: the grain row is taken. */
  private static final Map<String, String> BARE =
      Map.of(
          "barley", "Barley (grain)",
          "corn", "Corn / maize (grain)",
          "maize", "Corn / maize (grain)",
          "rye", "Rye (grain)",
          "wheat", "Wheat (bread)");

  /** Twelve common crops, used where the user names none. */
  private static final List<String> TWELVE =
      List.of(
          "Alfalfa / lucerne",
          "Barley (grain)",
          "Wheat (bread)",
          "Corn / maize (grain)",
          "Sorghum (grain)",
          "Sudan grass",
          "Bermuda grass",
          "Wheatgrass, tall",
          "Cotton",
          "Sugar beet",
          "Tomato",
          "Almond");

  /** Everyday names, and the row that each means. */
  private static final Map<String, String> EVERYDAY =
      FactTable.rows("crop_names.csv").stream()
          .collect(Collectors.toMap(row -> row.get("name"), row -> row.get("crop")));

  private static final Crops STANDARD = new Crops();

  private final List<Crop> crops;
  private final List<Alternative> alternatives;

  /** What another source or edition gives for a crop of the table. */
  public record Alternative(
      String crop,
      Crop.Tolerance tolerance,
      String edition,
      String source,
      String confidence,
      String note) {}

  /**
   * The row that a name means.
   *
   * @param others rows that the name could also mean, not taken
   */
  public record Match(Crop crop, List<Crop> others) {
    public Match {
      others = List.copyOf(others);
    }

    /** Says which row was taken and which were not; empty where the name left no choice. */
    public Optional<String> sentence() {
      if (others.isEmpty()) {
        return Optional.empty();
      }
      String rest = others.stream().map(Crop::name).collect(Collectors.joining("; "));
      return Optional.of("taken as \"" + crop.name() + "\"; also in the table: " + rest);
    }
  }

  private Crops(List<Crop> crops, List<Alternative> alternatives) {
    this.crops = crops;
    this.alternatives = alternatives;
  }

  /** The table with crops of the user's own, which win where a name is the same. */
  public Crops with(List<Crop> own) {
    Set<String> names = own.stream().map(c -> fold(c.name())).collect(Collectors.toSet());
    List<Crop> all = new ArrayList<>(own);
    crops.stream().filter(c -> !names.contains(fold(c.name()))).forEach(all::add);
    return own.isEmpty() ? this : new Crops(List.copyOf(all), alternatives);
  }

  private Crops() {
    List<Crop> all = new ArrayList<>();
    FactTable.rows("crops.csv").forEach(row -> all.add(crop(row, true)));
    FactTable.rows("crops_rating_only.csv").forEach(row -> all.add(crop(row, false)));
    crops = List.copyOf(all);
    alternatives =
        FactTable.rows("crop_alternatives.csv").stream().map(Crops::alternative).toList();
  }

  /** The table as shipped. */
  public static Crops standard() {
    return STANDARD;
  }

  private static Crop crop(Map<String, String> row, boolean numbers) {
    return new Crop(
        row.get("crop"),
        row.get("botanical"),
        numbers ? Optional.of(tolerance(row)) : Optional.empty(),
        row.get("rating"),
        row.get("group"),
        row.get("edition"),
        row.get("source"),
        row.get("confidence"),
        Optional.ofNullable(row.get("note")).orElse(""));
  }

  private static Crop.Tolerance tolerance(Map<String, String> row) {
    return new Crop.Tolerance(
        Double.parseDouble(row.get("threshold_dS_m")),
        Double.parseDouble(row.get("slope_pct_per_dS_m")));
  }

  private static Alternative alternative(Map<String, String> row) {
    return new Alternative(
        row.get("crop"),
        tolerance(row),
        row.get("edition"),
        row.get("source"),
        row.get("confidence"),
        Optional.ofNullable(row.get("note")).orElse(""));
  }

  /** The twelve crops compared where the user names none. */
  public List<Crop> twelve() {
    return TWELVE.stream().map(name -> exact(name).orElseThrow()).toList();
  }

  /** Crops whose common or botanical name contains the text, case-blind; all for empty text. */
  public List<Crop> search(String text) {
    String wanted = fold(text);
    return crops.stream()
        .filter(c -> fold(c.name()).contains(wanted) || fold(c.botanical()).contains(wanted))
        .toList();
  }

  /** Numbers of other sources and editions for this crop. */
  public List<Alternative> alternatives(Crop crop) {
    return alternatives.stream().filter(a -> a.crop().equals(crop.name())).toList();
  }

  /**
   * The row that a name means: its exact name, one of the names it goes by (with or without spaces,
   * singular or plural), the only row with all of its words, or the only row that contains it. A
   * bare barley, corn, rye or wheat is the grain, and the others are named.
   *
   * @throws InputProblem if no row, or more than one, fits; it names what comes nearest
   */
  public Match find(String text) {
    for (String wanted : singularToo(fold(text))) {
      Optional<Crop> exact = exact(wanted);
      if (exact.isPresent()) {
        return new Match(exact.get(), List.of());
      }
      if (BARE.containsKey(wanted)) {
        Crop taken = exact(BARE.get(wanted)).orElseThrow();
        return new Match(taken, without(named(wanted), taken));
      }
      if (EVERYDAY.containsKey(wanted)) {
        Crop taken = exact(EVERYDAY.get(wanted)).orElseThrow();
        String kind = fold(taken.name()).split(" [(/]|,")[0].strip();
        return new Match(taken, without(named(kind), taken));
      }
      List<Crop> fits = fitting(wanted);
      if (!fits.isEmpty()) {
        return only(text, fits);
      }
    }
    throw unknown(text, List.of());
  }

  private static List<String> singularToo(String wanted) {
    List<String> spellings = new ArrayList<>(List.of(wanted));
    for (String ending : List.of("s", "es")) {
      if (wanted.endsWith(ending) && wanted.length() > 4) {
        spellings.add(wanted.substring(0, wanted.length() - ending.length()));
      }
    }
    return spellings;
  }

  /**
   * One row with numbers beats those with a rating only, and a grain or seed row its forage; where
   * more than one is left the user is asked.
   */
  private Match only(String text, List<Crop> fits) {
    List<Crop> best = narrowed(fits, c -> c.tolerance().isPresent());
    if (best.stream().allMatch(c -> c.group().equals("field") || c.group().equals("forage"))) {
      best = narrowed(best, c -> c.group().equals("field"));
    }
    if (best.size() > 1) {
      throw unknown(text, fits);
    }
    return new Match(best.get(0), without(fits, best.get(0)));
  }

  /** Those that fit better; all where none does. */
  private static List<Crop> narrowed(List<Crop> fits, Predicate<Crop> better) {
    List<Crop> some = fits.stream().filter(better).toList();
    return some.isEmpty() ? fits : some;
  }

  /** Rows by name or all of the words, else by the beginning, else by any part. */
  private List<Crop> fitting(String wanted) {
    if (wanted.length() < 3) {
      return List.of();
    }
    List<Supplier<List<Crop>>> ways =
        List.of(() -> named(wanted), () -> startingWith(wanted), () -> search(wanted));
    return ways.stream().map(Supplier::get).filter(f -> !f.isEmpty()).findFirst().orElse(List.of());
  }

  private List<Crop> named(String wanted) {
    String letters = letters(wanted);
    List<String> words = List.of(wanted.split("[^a-z]+"));
    return crops.stream()
        .filter(
            c ->
                names(c).anyMatch(n -> letters(n).equals(letters))
                    || List.of(fold(c.name()).split("[^a-z]+")).containsAll(words))
        .toList();
  }

  private static String letters(String name) {
    return name.replaceAll("[^a-z]", "");
  }

  private List<Crop> startingWith(String wanted) {
    return crops.stream().filter(c -> names(c).anyMatch(n -> n.startsWith(wanted))).toList();
  }

  private static List<Crop> without(List<Crop> some, Crop taken) {
    return some.stream().filter(c -> !c.equals(taken)).toList();
  }

  private Optional<Crop> exact(String text) {
    String wanted = fold(text);
    return crops.stream().filter(c -> fold(c.name()).equals(wanted)).findFirst();
  }

  /** The names a row goes by: parts between slashes, without the use in brackets; both orders. */
  private static Stream<String> names(Crop crop) {
    String name = fold(crop.name());
    String bare = name.replaceAll("\\s*\\([^)]*\\)", "");
    String[] comma = bare.split(", ", 2);
    Stream<String> turned =
        comma.length == 2 ? Stream.of(comma[1] + " " + comma[0]) : Stream.empty();
    return Stream.concat(Stream.concat(Stream.of(name), Stream.of(bare.split(" / "))), turned);
  }

  private InputProblem unknown(String text, List<Crop> fits) {
    List<String> near =
        fits.isEmpty() ? nearest(fold(text)) : fits.stream().map(Crop::name).limit(12).toList();
    return new InputProblem(
        "crop",
        "\"" + text + "\"",
        fits.isEmpty() ? "a crop of the table" : "a name that only one row carries",
        (fits.isEmpty() ? "Nearest: " : "Say which: ")
            + String.join("; ", near)
            + ". `fieldsalt crops TEXT` lists the table.");
  }

  private List<String> nearest(String wanted) {
    return crops.stream()
        .map(Crop::name)
        .sorted(
            Comparator.comparingInt((String n) -> distance(wanted, fold(n)))
                .thenComparing(Comparator.naturalOrder()))
        .limit(3)
        .toList();
  }

  /** Edits that turn the text into the start of the name (Levenshtein 1966, free ending). */
  private static int distance(String text, String name) {
    int[] row = new int[name.length() + 1];
    for (int j = 0; j <= name.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= text.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= name.length(); j++) {
        int change = diagonal + (text.charAt(i - 1) == name.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(change, Math.min(row[j], row[j - 1]) + 1);
      }
    }
    int best = row[0];
    for (int value : row) {
      best = Math.min(best, value);
    }
    return best;
  }

  private static String fold(String text) {
    return text.trim().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
  }
}
