package fieldsalt.read.sample;

import fieldsalt.geo.PlaceM;
import fieldsalt.quantity.DepthRange;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.read.file.SourceRow;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One row of a laboratory sheet: one reading by one method of one layer at one place. Temperature
 * is not yet corrected, nothing is converted to another basis.
 *
 * @param id the site's name, trimmed
 * @param field name of the field it lies in; empty text where no field is known (convert)
 * @param place metres; empty for a table without coordinates and for a composite
 * @param ec empty where the row brings only other properties
 * @param extras what few sheets bring
 * @param method empty only where the row brings no EC
 */
public record Sample(
    String id,
    String field,
    Optional<PlaceM> place,
    DepthRange depth,
    Optional<Method> method,
    ReadingKind reading,
    Optional<Ec> ec,
    OptionalDouble temperatureC,
    boolean temperatureCompensated,
    Soil soil,
    Ions ions,
    String laboratory,
    Optional<LocalDate> date,
    PairKind pair,
    OptionalDouble restedH,
    boolean composite,
    SourceRow source,
    Extras extras) {

  /** A row that brings nothing out of the ordinary. */
  public Sample(
      String id,
      String field,
      Optional<PlaceM> place,
      DepthRange depth,
      Optional<Method> method,
      ReadingKind reading,
      Optional<Ec> ec,
      OptionalDouble temperatureC,
      boolean temperatureCompensated,
      Soil soil,
      Ions ions,
      String laboratory,
      Optional<LocalDate> date,
      PairKind pair,
      OptionalDouble restedH,
      boolean composite,
      SourceRow source) {
    this(
        id,
        field,
        place,
        depth,
        method,
        reading,
        ec,
        temperatureC,
        temperatureCompensated,
        soil,
        ions,
        laboratory,
        date,
        pair,
        restedH,
        composite,
        source,
        Extras.none());
  }

  public Sample withField(String other, Optional<PlaceM> where) {
    return new Sample(
        id,
        other,
        where,
        depth,
        method,
        reading,
        ec,
        temperatureC,
        temperatureCompensated,
        soil,
        ions,
        laboratory,
        date,
        pair,
        restedH,
        composite,
        source,
        extras);
  }

  public Sample withSoil(Soil other) {
    return new Sample(
        id,
        field,
        place,
        depth,
        method,
        reading,
        ec,
        temperatureC,
        temperatureCompensated,
        other,
        ions,
        laboratory,
        date,
        pair,
        restedH,
        composite,
        source,
        extras);
  }

  public Sample withIons(Ions other) {
    return new Sample(
        id,
        field,
        place,
        depth,
        method,
        reading,
        ec,
        temperatureC,
        temperatureCompensated,
        soil,
        other,
        laboratory,
        date,
        pair,
        restedH,
        composite,
        source,
        extras);
  }

  /** The same reading, found elsewhere. */
  public Sample withSource(SourceRow other) {
    return new Sample(
        id,
        field,
        place,
        depth,
        method,
        reading,
        ec,
        temperatureC,
        temperatureCompensated,
        soil,
        ions,
        laboratory,
        date,
        pair,
        restedH,
        composite,
        other,
        extras);
  }

  public Sample withLaboratory(String other) {
    return new Sample(
        id,
        field,
        place,
        depth,
        method,
        reading,
        ec,
        temperatureC,
        temperatureCompensated,
        soil,
        ions,
        other,
        date,
        pair,
        restedH,
        composite,
        source,
        extras);
  }
}
