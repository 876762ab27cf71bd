package fieldsalt.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fieldsalt.finding.FieldFault;
import fieldsalt.read.job.JobDocument;
import fieldsalt.surface.Surface;
import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A field that makes trouble is told and left out; the others are written. */
class FieldFaultTest {
  private static final JobDocument JOB =
      JobDocument.read(Path.of("sample-fields/ranch/job.yaml"), List.of());

  @TempDir Path temp;

  /** A surface that fails where one of its methods is asked of some fields. */
  private static Surface failing(Surface real, String method, Set<String> fields) {
    return (Surface)
        Proxy.newProxyInstance(
            Surface.class.getClassLoader(),
            new Class<?>[] {Surface.class},
            (proxy, called, arguments) -> {
              if (called.getName().equals(method)
                  && fields.stream().anyMatch(f -> arguments[0].toString().contains(f))) {
                throw new IllegalStateException("trouble on purpose");
              }
              try {
                return called.invoke(real, arguments);
              } catch (InvocationTargetException e) {
                throw e.getCause();
              }
            });
  }

  private static final Prepared READ = Prepared.of(JOB, (stage, share) -> {});
  private static final Surface FITTED = MapRun.fit(READ, (stage, share) -> {});

  /** While it is mapped, and while it is planned. */
  @ParameterizedTest
  @ValueSource(strings = {"map", "marginals"})
  void theOtherFieldsAreWritten(String method) throws IOException {
    Path out = temp.resolve("out");
    MapRun run = MapRun.prepare(JOB, out, false, (stage, share) -> {});
    MapSummary summary = run.compute(READ, failing(FITTED, method, Set.of("creek")));
    assertThat(summary.leftOut()).contains("creek");
    assertThat(summary.findings())
        .anyMatch(
            f ->
                f.code().id().equals("field-fault")
                    && f.where().contains("creek")
                    && f.found().contains("trouble on purpose"));
    run.write("test", Optional.empty());
    String zones = Files.readString(out.resolve("zones.geojson"));
    assertThat(zones).contains("north-1").doesNotContain("creek-1");
    assertThat(Files.readString(out.resolve("rates.csv")))
        .contains("garden")
        .doesNotContain("creek");
  }

  @Test
  void whereNoFieldIsLeftTheFaultIsToldAsOne() {
    MapRun run = MapRun.prepare(JOB, temp.resolve("none"), false, (stage, share) -> {});
    Surface failing = failing(FITTED, "map", Set.of("north", "creek", "garden"));
    assertThatThrownBy(() -> run.compute(READ, failing))
        .isInstanceOf(FieldFault.class)
        .hasMessageContaining("trouble on purpose");
  }

  /** What is said where memory ends: the stage, the size of the job as far as it is known. */
  @Test
  void whatIsSaidOfMemory() {
    MapRun run = MapRun.prepare(JOB, temp.resolve("memory"), false, (stage, share) -> {});
    assertThat(run.memoryEnded().getMessage()).contains("memory ended while starting");
    run.compute(READ, FITTED);
    assertThat(run.memoryEnded().getMessage())
        .contains("memory ended while planning", "3 fields", "76 sites", "zones", "cells held")
        .contains("Split the job");
  }
}
