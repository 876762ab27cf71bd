package fieldsalt.report.record;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import fieldsalt.report.PageFixture;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class RunRecordTest {
  private final PageFixture fixture = new PageFixture();

  private static RunFacts facts(Optional<String> stamp) {
    return new RunFacts(
        Map.of("cell-m", "auto", "odd", Double.NaN),
        Map.of("fieldsalt", "0.1.0"),
        List.of("zones.geojson"),
        stamp);
  }

  private JsonNode record(Optional<String> stamp) throws Exception {
    return new ObjectMapper().readTree(RunRecord.json(fixture.input(), facts(stamp)));
  }

  @Test
  void holdsWhatTheRunRestsOn() throws Exception {
    JsonNode run = record(Optional.empty());
    assertThat(run.at("/job/cell-m").asText()).isEqualTo("auto");
    assertThat(run.at("/versions/fieldsalt").asText()).isEqualTo("0.1.0");
    assertThat(run.at("/inputs_sha256/samples.csv").asText()).hasSize(64);
    assertThat(run.at("/projection/epsg").asInt()).isEqualTo(32605);
    assertThat(run.at("/fields/0/classes/breaks/0").asDouble()).isEqualTo(2);
    assertThat(run.at("/surface/variogram/rangeM").asDouble()).isEqualTo(240);
    assertThat(run.at("/surface/leave_one_out")).hasSize(2);
    assertThat(run.at("/zones")).hasSameSizeAs(fixture.input().zones());
    assertThat(run.at("/finding_counts/unit-slip").asInt()).isEqualTo(1);
    assertThat(run.at("/findings")).hasSize(5);
    assertThat(run.at("/citations").toString()).contains("Slavich", "Maas");
  }

  @Test
  void theClockStandsInItOnlyIfAskedFor() throws Exception {
    assertThat(record(Optional.empty()).has("stamp")).isFalse();
    assertThat(record(Optional.of("2026-03-10T08:00:00Z")).at("/stamp").asText())
        .isEqualTo("2026-03-10T08:00:00Z");
  }

  @Test
  void whatIsNotANumberIsNullAndTheTextRepeats() throws Exception {
    assertThat(record(Optional.empty()).at("/job/odd").isNull()).isTrue();
    assertThat(RunRecord.json(fixture.input(), facts(Optional.empty())))
        .isEqualTo(RunRecord.json(new PageFixture().input(), facts(Optional.empty())));
  }
}
