package fieldsalt.read.sample;

import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.word.DateText;
import fieldsalt.read.word.DepthText;
import fieldsalt.read.word.ReadingUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A row of a samples file with what its own cells say; what the file or the job must decide (depth,
 * date, units) is still open.
 */
record ParsedRow(
    SourceRow source,
    String id,
    Optional<Spot> spot,
    String namedField,
    Optional<DepthText> depth,
    Optional<DateText> date,
    String laboratory,
    Soil soil,
    Ions ions,
    Extras extras,
    Handling handling,
    List<Reading> readings) {

  /** How the sample and its extract were treated. */
  record Handling(
      OptionalDouble temperatureC,
      boolean temperatureCompensated,
      OptionalDouble restedH,
      PairKind pair,
      boolean composite) {}

  /**
   * One cell of EC.
   *
   * @param unit what cell, row or header say; empty if none does
   * @param raw the number or limit, in that unit
   */
  record Reading(
      Optional<Method> method,
      ReadingKind kind,
      Ec.Censored censored,
      double raw,
      Optional<ReadingUnit> unit,
      String header) {}

  /** The same row of another site, at the layer that its id gave. */
  ParsedRow renamed(String otherId, Optional<DepthText> otherDepth) {
    return new ParsedRow(
        source,
        otherId,
        spot,
        namedField,
        otherDepth,
        date,
        laboratory,
        soil,
        ions,
        extras,
        handling,
        readings);
  }

  /** A sample of this row, with the place and the field that the row gives. */
  UnplacedSample unplaced(Sample sample) {
    return new UnplacedSample(sample, spot, namedField);
  }
}
