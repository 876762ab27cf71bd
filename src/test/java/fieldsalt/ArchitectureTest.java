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
  void onlyGeoAndHandoverKnowGeoTools() {
    noClasses()
        .that()
        .resideOutsideOfPackages("fieldsalt.geo..", "fieldsalt.handover..")
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
