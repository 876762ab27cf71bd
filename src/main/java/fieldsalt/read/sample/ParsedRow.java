package fieldsalt.read.sample;

import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.word.DateText;
import fieldsalt.read.word.DepthText;
import fieldsalt.read.word.ReadingUnit;
import java.util.List;
import java.util.Optional;

/**
 * A line of a samples file with what its own cells say; what the file or the job must decide
 * (depth, date, units) is still open.
 */
public record ParsedRow(
    SourceRow source,
    String id,
    Optional<Spot> spot,
    String fieldSaid,
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
      java.util.OptionalDouble temperatureC,
      boolean temperatureCompensated,
      java.util.OptionalDouble restedH,
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
}
