package fieldsalt.read.site;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.basis.Samples;
import fieldsalt.finding.Code;
import fieldsalt.quantity.DepthRange;
import fieldsalt.read.file.Notes;
import fieldsalt.read.sample.Sample;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** One depth written in two ways, and a row without its date. */
class MatchedRowsTest {
  private static final String MARCH = "2026-03-10";

  private final Notes notes = new Notes();

  private List<Sample> matched(Sample... samples) {
    return MatchedRows.of(List.of(samples), notes);
  }

  private static Sample at(String id, double top, double bottom) {
    return Samples.sample().id(id).depth(top, bottom).get();
  }

  @Test
  void twelveInchesAreThirtyCentimetres() {
    List<Sample> rows =
        matched(at("A", 0, 30), at("B", 0, 30), at("A", 0, 30.48), at("B", 30.48, 60.96));
    assertThat(rows.get(2).depth()).isEqualTo(new DepthRange(0, 30));
    assertThat(rows.get(3).depth()).isEqualTo(new DepthRange(30, 60.96));
  }

  @Test
  void depthsFartherApartOrOfThinLayersStay() {
    List<Sample> rows =
        matched(at("A", 0, 30), at("A", 0, 32.1), at("B", 0, 2), at("B", 2, 5), at("C", 0, 5));
    assertThat(rows.get(1).depth()).isEqualTo(new DepthRange(0, 32.1));
    assertThat(rows.get(2).depth()).isEqualTo(new DepthRange(0, 2));
    assertThat(rows.get(3).depth()).isEqualTo(new DepthRange(2, 5));
  }

  @Test
  void anUndatedRowBelongsToTheOneVisit() {
    Sample dated = Samples.sample().id("A").date(MARCH).get();
    List<Sample> rows =
        matched(dated, Samples.sample().id("A").paste(3).get(), Samples.sample().id("B").get());
    assertThat(rows.get(1).date()).contains(LocalDate.parse(MARCH));
    assertThat(rows.get(2).date()).isEmpty();
    assertThat(notes.findings()).isEmpty();
  }

  @Test
  void ofSeveralVisitsNoneIsGuessed() {
    List<Sample> rows =
        matched(
            Samples.sample().id("A").date(MARCH).get(),
            Samples.sample().id("A").date("2027-03-10").get(),
            Samples.sample().id("A").paste(3).get());
    assertThat(rows.get(2).date()).isEmpty();
    assertThat(notes.findings())
        .singleElement()
        .satisfies(f -> assertThat(f.code()).isEqualTo(Code.UNDATED_ROW));
  }
}
