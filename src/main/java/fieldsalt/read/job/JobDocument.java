package fieldsalt.read.job;

import fieldsalt.finding.InputProblem;
import fieldsalt.finding.InputProblem.Problem;
import fieldsalt.quantity.DepthRange;
import fieldsalt.read.file.InputFile;
import fieldsalt.read.file.TextDecoding;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;

/**
 * A job: every key of the catalogue ({@link JobKeys}) with its value or default, checked.
 *
 * <p>Keys are asked for by path: {@code number("water.ec-dS-m")}, or, where a name stands in it, by
 * segments: {@code text("laboratory", name, "method")}. Asking for a key that the catalogue does
 * not hold, or by a wrong type, is a bug ({@link IllegalArgumentException}). Paths in the file are
 * relative to it.
 */
public final class JobDocument {
  private final String name;
  private final Path folder;
  private final Optional<InputFile> file;
  private final JobNode tree;
  private final Map<List<String>, Object> values;
  private final Map<List<String>, String> places;

  /** Keys that are said for one field alone; none of the ranch's job. */
  private final Set<List<String>> ofField;

  private JobDocument(
      String name, Path folder, Optional<InputFile> file, JobNode tree, List<Problem> problems) {
    JobCheck check = new JobCheck(problems);
    check.check(tree);
    if (!problems.isEmpty()) {
      throw new InputProblem(problems);
    }
    this.name = name;
    this.folder = folder;
    this.file = file;
    this.tree = tree;
    this.values = Collections.unmodifiableMap(check.values());
    this.places = check.places();
    this.ofField = Set.of();
  }

  private JobDocument(
      JobDocument ranch,
      Map<List<String>, Object> values,
      Map<List<String>, String> places,
      Set<List<String>> ofField) {
    this.name = ranch.name;
    this.folder = ranch.folder;
    this.file = ranch.file;
    this.tree = ranch.tree;
    this.values = Collections.unmodifiableMap(values);
    this.places = places;
    this.ofField = Set.copyOf(ofField);
  }

  /**
   * The job as it is for one field: what the boundary file says of the field laid over it, then
   * what {@code by-field} says. This job itself where neither says anything.
   *
   * @param ofBoundary value of each key, as {@link #problemWith} accepts it
   * @param place where the boundary stands, for messages
   */
  public JobDocument forField(String field, Map<String, String> ofBoundary, String place) {
    Map<List<String>, Object> own = new LinkedHashMap<>(values);
    Map<List<String>, String> where = new LinkedHashMap<>(places);
    Set<List<String>> set = new TreeSet<>(Comparator.comparing(k -> String.join(".", k)));
    ofBoundary.forEach(
        (key, text) -> {
          List<String> path = segments(key);
          own.put(path, JobKeys.at(path).orElseThrow().type().value(List.of(text), false));
          where.put(path, place);
          set.add(path);
        });
    values.forEach(
        (path, value) -> {
          if (path.size() > 2 && path.get(0).equals("by-field") && path.get(1).equals(field)) {
            List<String> key = path.subList(2, path.size());
            if (JobKeys.at(key).isEmpty()) {
              return;
            }
            own.put(key, value);
            where.put(key, places.get(path));
            set.add(key);
          }
        });
    return set.isEmpty() ? this : new JobDocument(this, own, where, set);
  }

  /** Whether a key is said for this field alone. */
  public boolean isOfField(String... path) {
    return ofField.contains(checked(path));
  }

  /** What is wrong with a text as the value of a key; empty if nothing is. */
  public static Optional<String> problemWith(String key, String text) {
    JobKey known = JobKeys.at(segments(key)).orElseThrow();
    try {
      known.type().value(List.of(text), false);
      return Optional.empty();
    } catch (JobType.Refused e) {
      return Optional.of(known.type().expected());
    }
  }

  /** A job from a YAML file, with {@code key=value} settings laid over it. */
  public static JobDocument read(Path file, List<String> sets) {
    InputFile input = InputFile.read(file);
    List<Problem> problems = new ArrayList<>();
    String text = TextDecoding.decode(input);
    JobNode tree = JobYaml.read(input.name(), true, text, problems);
    Path folder = file.toAbsolutePath().getParent();
    return new JobDocument(
        input.name(), folder, Optional.of(input), overlaid(tree, sets, problems), problems);
  }

  /** A job without a file; paths in it are relative to a folder. */
  public static JobDocument ofSettings(Path folder, List<String> sets) {
    List<Problem> problems = new ArrayList<>();
    JobNode tree = overlaid(new JobNode.Nothing("command line"), sets, problems);
    return new JobDocument(
        "command line", folder.toAbsolutePath(), Optional.empty(), tree, problems);
  }

  /** A job from flags alone. Paths are relative to the current folder. */
  public static JobDocument ofFlags(
      Optional<Path> fields, List<Path> samples, Optional<Path> survey, Optional<String> crop) {
    Map<String, JobNode> entries = new LinkedHashMap<>();
    fields.ifPresent(f -> entries.put("fields", flag("--fields", f.toString())));
    if (!samples.isEmpty()) {
      List<JobNode> files = samples.stream().map(s -> flag("--samples", s.toString())).toList();
      entries.put("samples", new JobNode.Items("--samples", files));
    }
    survey.ifPresent(f -> entries.put("survey", flag("--survey", f.toString())));
    crop.ifPresent(c -> entries.put("crop", flag("--crop", c)));
    JobNode tree = new JobNode.Entries("command line", entries);
    return new JobDocument(
        "command line", Path.of("").toAbsolutePath(), Optional.empty(), tree, new ArrayList<>());
  }

  /** This job with {@code key=value} settings laid over it, later ones winning. */
  public JobDocument withSets(List<String> assignments) {
    List<Problem> problems = new ArrayList<>();
    return new JobDocument(name, folder, file, overlaid(tree, assignments, problems), problems);
  }

  private static JobNode flag(String option, String text) {
    return new JobNode.Scalar(option, text);
  }

  private static JobNode overlaid(JobNode tree, List<String> sets, List<Problem> problems) {
    JobNode whole = tree;
    for (String set : sets) {
      Optional<JobNode.Entries> top = JobAssignment.read(set, problems);
      if (top.isPresent()) {
        whole =
            whole instanceof JobNode.Entries below
                ? below.overlaid(top.get())
                : whole instanceof JobNode.Nothing ? top.get() : whole;
      }
    }
    return whole;
  }

  /** The file's name, or {@code command line}. */
  public String name() {
    return name;
  }

  public Optional<InputFile> file() {
    return file;
  }

  /** The folder that paths are relative to. */
  public Path folder() {
    return folder;
  }

  /** Whether the user wrote this key; false where its default holds. */
  public boolean given(String... path) {
    return values.containsKey(checked(path));
  }

  /**
   * Where a key is written, for messages: file and line, or the option; the job's name if not
   * given.
   */
  public String place(String... path) {
    return places.getOrDefault(checked(path), name);
  }

  /** A word or text. */
  public Optional<String> text(String... path) {
    return value(path).map(v -> as(String.class, v, path));
  }

  /** A word that always has a value. */
  public String word(String path) {
    return text(path).orElseThrow(() -> new IllegalArgumentException("no default: " + path));
  }

  /** A number; empty if it is not given and has no default, or is {@code auto}. */
  public OptionalDouble number(String... path) {
    Object value = value(path).orElse("auto");
    return value.equals("auto")
        ? OptionalDouble.empty()
        : OptionalDouble.of(as(Number.class, value, path).doubleValue());
  }

  /** A number that always has a value. */
  public double amount(String path) {
    return number(path).orElseThrow(() -> new IllegalArgumentException("no default: " + path));
  }

  /** A yes or no; no if it is not given. */
  public boolean flag(String... path) {
    return value(path).map(v -> as(Boolean.class, v, path)).orElse(false);
  }

  /** A depth range in cm. */
  public Optional<DepthRange> depth(String... path) {
    return value(path).map(v -> as(DepthRange.class, v, path));
  }

  /** A list of texts, empty if not given. */
  public List<String> texts(String... path) {
    return list(String.class, path);
  }

  /** A list of numbers, empty if not given. */
  public List<Double> numbers(String... path) {
    return list(Double.class, path);
  }

  /** A file, from the root of the file system. */
  public Optional<Path> path(String... path) {
    return value(path).map(v -> folder.resolve(as(Path.class, v, path)).normalize());
  }

  /** Files, from the root of the file system; empty if not given. */
  public List<Path> paths(String... path) {
    return list(Path.class, path).stream().map(p -> folder.resolve(p).normalize()).toList();
  }

  /** Every file that the job names, from the root of the file system, and the job file itself. */
  public List<Path> inputs() {
    List<Path> inputs = new ArrayList<>();
    for (Object value : values.values()) {
      for (Object one : value instanceof List<?> many ? many : List.of(value)) {
        if (one instanceof Path path) {
          inputs.add(folder.resolve(path).normalize());
        }
      }
    }
    inputs.add(folder.resolve(name));
    return inputs;
  }

  /** The names that the user wrote below a key, sorted: {@code names("laboratory")}. */
  public List<String> names(String... path) {
    List<String> above = segments(path);
    Set<String> names = new TreeSet<>();
    for (List<String> given : values.keySet()) {
      if (given.size() > above.size() && given.subList(0, above.size()).equals(above)) {
        names.add(given.get(above.size()));
      }
    }
    return List.copyOf(names);
  }

  /**
   * Every key that has a value, given or default, nested as in the file and in the catalogue's
   * order: what {@code run.json} keeps. Paths stay as the user wrote them.
   */
  public Map<String, Object> effective() {
    return new EffectiveJob(values, key -> value(key.toArray(String[]::new))).nested();
  }

  private Optional<Object> value(String... path) {
    List<String> key = checked(path);
    Object given = values.get(key);
    return given != null ? Optional.of(given) : fallback(key);
  }

  private static Optional<Object> fallback(List<String> path) {
    String written = JobKeys.at(path).orElseThrow().fallback();
    return written.isEmpty() ? Optional.empty() : Optional.of(JobDefaults.value(path));
  }

  private <T> List<T> list(Class<T> type, String... path) {
    List<T> items = new ArrayList<>();
    for (Object item : (List<?>) as(List.class, value(path).orElse(List.of()), path)) {
      items.add(as(type, item, path));
    }
    return List.copyOf(items);
  }

  private static <T> T as(Class<T> type, Object value, String... path) {
    if (!type.isInstance(value)) {
      throw new IllegalArgumentException(
          String.join(".", path) + " is no " + type.getSimpleName() + ", was " + value);
    }
    return type.cast(value);
  }

  private static List<String> segments(String... path) {
    return path.length == 1 ? List.of(path[0].split("\\.")) : List.of(path);
  }

  private static List<String> checked(String... path) {
    List<String> key = segments(path);
    if (JobKeys.at(key).isEmpty()) {
      throw new IllegalArgumentException("no such job key: " + String.join(".", key));
    }
    return key;
  }
}
