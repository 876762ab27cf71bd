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

  /** The row as one of a field, at a place of the ranch's projection. */
  public Sample withField(String other, Optional<PlaceM> where) {
    return with(other, where, soil, ions, laboratory, source);
  }

  public Sample withSoil(Soil other) {
    return with(field, place, other, ions, laboratory, source);
  }

  public Sample withDepth(DepthRange other) {
    return at(other, date);
  }

  public Sample withDate(Optional<LocalDate> other) {
    return at(depth, other);
  }

  private Sample at(DepthRange newDepth, Optional<LocalDate> newDate) {
    return new Sample(
        id,
        field,
        place,
        newDepth,
        method,
        reading,
        ec,
        temperatureC,
        temperatureCompensated,
        soil,
        ions,
        laboratory,
        newDate,
        pair,
        restedH,
        composite,
        source,
        extras);
  }

  public Sample withIons(Ions other) {
    return with(field, place, soil, other, laboratory, source);
  }

  /** The same reading, found elsewhere. */
  public Sample withSource(SourceRow other) {
    return with(field, place, soil, ions, laboratory, other);
  }

  public Sample withLaboratory(String other) {
    return with(field, place, soil, ions, other, source);
  }

  private Sample with(
      String newField,
      Optional<PlaceM> newPlace,
      Soil newSoil,
      Ions newIons,
      String newLaboratory,
      SourceRow newSource) {
    return new Sample(
        id,
        newField,
        newPlace,
        depth,
        method,
        reading,
        ec,
        temperatureC,
        temperatureCompensated,
        newSoil,
        newIons,
        newLaboratory,
        date,
        pair,
        restedH,
        composite,
        newSource,
        extras);
  }
}
