package fieldsalt.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.cli.StageTimes.Moment;
import java.util.Iterator;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Seconds by stage with a made-up clock. */
class StageTimesTest {
  @Test
  void aStageThatComesAgainIsAddedUp() {
    Iterator<Moment> clock =
        List.of(
                new Moment(0.25, 0.5),
                new Moment(1.25, 2.5),
                new Moment(4.25, 5.5),
                new Moment(4.75, 6.25),
                new Moment(5.0, 6.5))
            .iterator();
    StageTimes times = new StageTimes(clock::next);
    times.begin("reading");
    times.begin("mapping");
    times.begin("reading");
    times.begin("planning");
    assertThat(times.end())
        .containsExactly(
            "stage                                  seconds processor s",
            "starting                                  0.25        0.50",
            "reading                                   1.50        2.75",
            "mapping                                   3.00        3.00",
            "planning                                  0.25        0.25",
            "all                                       5.00        6.50");
  }

  @Test
  void theTimesOfThisProcessRunFromItsStart() {
    List<String> lines = StageTimes.sinceStart().end();
    assertThat(lines).hasSize(3);
    String[] start = lines.get(1).split(" +");
    assertThat(start[0]).isEqualTo("starting");
    assertThat(Double.parseDouble(start[1])).isPositive();
    assertThat(Double.parseDouble(start[2])).isPositive();
  }
}
