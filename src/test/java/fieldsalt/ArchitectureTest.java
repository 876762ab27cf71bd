package fieldsalt;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The house: a folder is a stage, data goes through them in order and never back. */
class ArchitectureTest {
  private static final List<String> STAGES =
      List.of("read", "basis", "surface", "classes", "zones", "plan", "handover", "report");
  private static final Map<String, Set<String>> LEAVES =
      Map.of(
          "quantity", Set.of(),
          "finding", Set.of(),
          "gaussian", Set.of(),
          "facts", Set.of("quantity", "finding"),
          "geo", Set.of("finding", "quantity"));

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("fieldsalt");

  private static Map<String, Set<String>> allowed() {
    Map<String, Set<String>> allowed = new LinkedHashMap<>(LEAVES);
    Set<String> before = new TreeSet<>(LEAVES.keySet());
    for (String stage : STAGES) {
      allowed.put(stage, Set.copyOf(before));
      before.add(stage);
    }
    allowed.put("pipeline", Set.copyOf(before));
    before.add("pipeline");
    allowed.put("cli", Set.copyOf(before));
    return allowed;
  }

  private static String slice(JavaClass type) {
    String[] parts = type.getPackageName().split("\\.");
    return parts.length > 1 && parts[0].equals("fieldsalt") ? parts[1] : "";
  }

  @Test
  void noPackageImportsALaterStage() {
    Map<String, Set<String>> allowed = allowed();
    Set<String> seen = new TreeSet<>();
    Set<String> broken = new TreeSet<>();
    for (JavaClass type : CLASSES) {
      String from = slice(type);
      if (!type.getName().endsWith("package-info")) {
        seen.add(from);
      }
      for (Dependency d : type.getDirectDependenciesFromSelf()) {
        String to = slice(d.getTargetClass().getBaseComponentType());
        if (!to.isEmpty()
            && !to.equals(from)
            && !allowed.getOrDefault(from, Set.of()).contains(to)) {
          broken.add(from + " -> " + to + ": " + d.getDescription());
        }
      }
    }
    assertThat(seen).as("the scan saw every package that holds code").isEqualTo(packagesWithCode());
    assertThat(CLASSES.size()).isGreaterThan(30);
    assertThat(broken).isEmpty();
  }

  private static Set<String> packagesWithCode() {
    Path root = Path.of("src/main/java/fieldsalt");
    try (Stream<Path> files = Files.walk(root)) {
      return files
          .filter(f -> f.toString().endsWith(".java") && !f.endsWith("package-info.java"))
          .map(f -> root.relativize(f).getName(0).toString())
          .collect(Collectors.toCollection(TreeSet::new));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  @Test
  void noCycles() {
    slices().matching("fieldsalt.(*)..").should().beFreeOfCycles().check(CLASSES);
  }

  /**
   * A stage is a folder, a room is a sub-folder of it: rooms depend on one another in one order.
   */
  @Test
  void noCyclesBetweenRooms() {
    slices().matching("fieldsalt.(*).(**)").should().beFreeOfCycles().check(CLASSES);
    assertThat(rooms()).hasSizeGreaterThan(40);
  }

  @Test
  void noRoomHoldsMoreThanThirtyFilesAndNoFileMoreThan350Lines() throws IOException {
    List<String> tooLarge = new ArrayList<>();
    for (Path tree : List.of(Path.of("src/main/java"), Path.of("src/test/java"))) {
      try (Stream<Path> all = Files.walk(tree)) {
        for (Path path : all.sorted().collect(Collectors.toList())) {
          long size = Files.isDirectory(path) ? files(path) : lines(path);
          if (size > (Files.isDirectory(path) ? 30 : tree.endsWith("main/java") ? 350 : 700)) {
            tooLarge.add(path + ": " + size);
          }
        }
      }
    }
    assertThat(tooLarge).isEmpty();
  }

  private static long files(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(f -> f.toString().endsWith(".java")).count();
    }
  }

  private static long lines(Path file) throws IOException {
    try (Stream<String> lines = Files.lines(file)) {
      return lines.count();
    }
  }

  private static Set<String> rooms() {
    return CLASSES.stream()
        .map(JavaClass::getPackageName)
        .filter(name -> name.chars().filter(c -> c == '.').count() > 1)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** Tests lie in rooms that exist. */
  @Test
  void theTestTreeMirrorsTheRooms() throws IOException {
    Path tests = Path.of("src/test/java/fieldsalt");
    Path main = Path.of("src/main/java/fieldsalt");
    try (Stream<Path> folders = Files.walk(tests)) {
      List<Path> strangers =
          folders
              .filter(Files::isDirectory)
              .map(tests::relativize)
              .filter(f -> !f.toString().equals("sample") && !Files.isDirectory(main.resolve(f)))
              .collect(Collectors.toList());
      assertThat(strangers).isEmpty();
    }
  }

  @Test
  void aSimpleNameStandsForOneThing() {
    Map<String, Set<String>> byName = new java.util.TreeMap<>();
    CLASSES.stream()
        .filter(c -> c.isTopLevelClass() && !c.getSimpleName().equals("package-info"))
        .forEach(
            c ->
                byName
                    .computeIfAbsent(c.getSimpleName(), n -> new TreeSet<>())
                    .add(c.getPackageName()));
    byName.values().removeIf(packages -> packages.size() == 1);
    assertThat(byName).isEmpty();
  }

  /** What no command reaches is not part of the product. */
  @Test
  void mainReachesEveryType() {
    Map<String, JavaClass> open = new java.util.TreeMap<>();
    CLASSES.forEach(c -> open.put(c.getName(), c));
    List<JavaClass> reached = new ArrayList<>(List.of(open.remove("fieldsalt.cli.Main")));
    for (int i = 0; i < reached.size(); i++) {
      for (Dependency d : reached.get(i).getDirectDependenciesFromSelf()) {
        JavaClass next = open.remove(d.getTargetClass().getBaseComponentType().getName());
        if (next != null) {
          reached.add(next);
        }
      }
    }
    open.values().removeIf(ArchitectureTest::isWrittenByTheCompilerOrHoldsConstantsOnly);
    assertThat(reached).hasSizeGreaterThan(500);
    assertThat(open.keySet()).isEmpty();
  }

  /** Constants are copied to where they are used: no trace of their class is left there. */
  private static boolean isWrittenByTheCompilerOrHoldsConstantsOnly(JavaClass type) {
    return type.getName().endsWith("package-info")
        || type.getName().matches(".*\\$\\d+")
        || (type.getMethods().isEmpty() && type.getSimpleName().matches("Exit|Wgs84"));
  }

  @Test
  void onlyCliPrintsExitsOrReadsTheClock() {
    noClasses()
        .that()
        .resideOutsideOfPackage("fieldsalt.cli..")
        .should()
        .accessField(System.class, "out")
        .orShould()
        .accessField(System.class, "err")
        .orShould()
        .callMethod(System.class, "exit", int.class)
        .orShould()
        .callMethod(System.class, "currentTimeMillis")
        .orShould()
        .callMethod(java.time.Instant.class, "now")
        .orShould()
        .callMethod(java.time.LocalDate.class, "now")
        .check(CLASSES);
  }

  @Test
  void onlyTwoRoomsOfGeoKnowGeoTools() {
    noClasses()
        .that()
        .resideOutsideOfPackages("fieldsalt.geo.registry..", "fieldsalt.geo.raster..")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("org.geotools..")
        .check(CLASSES);
  }

  @Test
  void packageDocsSayWhichStageAndNoPackageIsADrawer() throws IOException {
    try (Stream<Path> dirs = Files.list(Path.of("src/main/java/fieldsalt"))) {
      List<Path> packages = dirs.filter(Files::isDirectory).collect(Collectors.toList());
      assertThat(packages).hasSize(allowed().size());
      for (Path dir : packages) {
        String name = dir.getFileName().toString();
        assertThat(name).isNotIn("util", "common", "model", "helper");
        String doc = Files.readString(dir.resolve("package-info.java")).replaceAll("[\\s*/]+", " ");
        int stage = STAGES.indexOf(name);
        String begins =
            stage >= 0 ? "Stage " + (stage + 1) + " of 8" : LEAVES.containsKey(name) ? "Leaf" : "";
        assertThat(doc.trim()).startsWith(begins);
      }
    }
  }
}
