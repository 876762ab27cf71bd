package fieldsalt.read.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import fieldsalt.finding.InputProblem.Problem;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Defaults of the catalogue. */
class JobDefaultsTest {
  /** Each default is what the same text would be in a job file. */
  @Test
  void everyDefaultIsWhatTheJobFileWouldGive() {
    List<Problem> problems = new ArrayList<>();
    JobCheck written = new JobCheck(problems);
    for (JobKey key : JobKeys.all()) {
      if (key.fallback().isEmpty()) {
        assertThat(JobDefaults.value(key.path())).as(key.name()).isNull();
      } else {
        String line = "{" + String.join(": {", key.path()) + ": " + key.fallback();
        written.check(JobYaml.read("job", true, line + "}".repeat(key.path().size()), problems));
        assertThat(JobDefaults.value(key.path()))
            .as(key.name())
            .isNotNull()
            .isEqualTo(written.values().get(key.path()));
      }
    }
    assertThat(problems).isEmpty();
    assertThat(written.values()).hasSizeGreaterThan(50);
  }

  @Test
  void aWrongDefaultStopsAtOnce() {
    assertThatIllegalStateException()
        .isThrownBy(() -> JobDefaults.typed(JobType.of("number[0,2]"), "3"))
        .withMessageContaining("3");
    assertThatIllegalStateException()
        .isThrownBy(() -> JobDefaults.typed(JobType.of("depth-range"), "[30]"))
        .withMessageContaining("[30]");
    assertThat(JobDefaults.typed(JobType.of("number-list"), "[2,  4 ,8]"))
        .isEqualTo(List.of(2.0, 4.0, 8.0));
  }
}
