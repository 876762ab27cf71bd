package fieldsalt.basis;

import fieldsalt.geo.PlaceM;
import fieldsalt.quantity.DepthRange;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.quantity.Texture;
import fieldsalt.read.Ec;
import fieldsalt.read.Extras;
import fieldsalt.read.Ions;
import fieldsalt.read.PairKind;
import fieldsalt.read.Sample;
import fieldsalt.read.Soil;
import fieldsalt.read.SourceRow;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Builds invented rows for tests: a loam at 0-30 cm by 1:5 extract, unless told otherwise. */
final class Samples {
  String id = "A1";
  String field = "north";
  Optional<PlaceM> place = Optional.of(new PlaceM(100, 200));
  DepthRange depth = new DepthRange(0, 30);
  Optional<Method> method = Optional.of(Method.ONE_TO_FIVE);
  ReadingKind kind = ReadingKind.EXTRACT;
  Optional<Ec> ec = Optional.of(new Ec(0.5, Ec.Censored.NO));
  OptionalDouble temperatureC = OptionalDouble.empty();
  boolean compensated = true;
  Texture texture = Texture.LOAM;
  OptionalDouble clay = OptionalDouble.empty();
  OptionalDouble sp = OptionalDouble.empty();
  OptionalDouble gypsum = OptionalDouble.empty();
  OptionalDouble om = OptionalDouble.empty();
  OptionalDouble bulkDensity = OptionalDouble.empty();
  OptionalDouble cec = OptionalDouble.empty();
  OptionalDouble ph = OptionalDouble.empty();
  Ions ions = Ions.none();
  String laboratory = "Lab";
  Optional<LocalDate> date = Optional.empty();
  PairKind pair = PairKind.SPLIT;
  OptionalDouble rested = OptionalDouble.empty();
  int row = 2;

  static Samples sample() {
    return new Samples();
  }

  Samples id(String v) {
    id = v;
    place = Optional.of(new PlaceM(v.hashCode() % 1000, v.hashCode() % 777));
    return this;
  }

  Samples field(String v) {
    field = v;
    return this;
  }

  Samples nowhere() {
    place = Optional.empty();
    return this;
  }

  Samples depth(double top, double bottom) {
    depth = new DepthRange(top, bottom);
    return this;
  }

  Samples method(Method m, ReadingKind k) {
    method = Optional.of(m);
    kind = k;
    return this;
  }

  Samples noMethod() {
    method = Optional.empty();
    return this;
  }

  Samples paste(double dSm) {
    laboratory = "Paste lab";
    return method(Method.PASTE, ReadingKind.EXTRACT).ec(dSm);
  }

  Samples ec(double dSm) {
    ec = Optional.of(new Ec(dSm, Ec.Censored.NO));
    return this;
  }

  Samples below(double dSm) {
    ec = Optional.of(new Ec(dSm, Ec.Censored.BELOW));
    return this;
  }

  Samples above(double dSm) {
    ec = Optional.of(new Ec(dSm, Ec.Censored.ABOVE));
    return this;
  }

  Samples noEc() {
    ec = Optional.empty();
    return this;
  }

  Samples uncompensated(double celsius) {
    compensated = false;
    temperatureC = OptionalDouble.of(celsius);
    return this;
  }

  Samples uncompensated() {
    compensated = false;
    return this;
  }

  Samples compensatedAt(double celsius) {
    compensated = true;
    temperatureC = OptionalDouble.of(celsius);
    return this;
  }

  Samples texture(Texture v) {
    texture = v;
    return this;
  }

  Samples clay(double v) {
    clay = OptionalDouble.of(v);
    return this;
  }

  Samples sp(double v) {
    sp = OptionalDouble.of(v);
    return this;
  }

  Samples gypsum(double v) {
    gypsum = OptionalDouble.of(v);
    return this;
  }

  Samples om(double v) {
    om = OptionalDouble.of(v);
    return this;
  }

  Samples bulkDensity(double v) {
    bulkDensity = OptionalDouble.of(v);
    return this;
  }

  Samples cec(double v) {
    cec = OptionalDouble.of(v);
    return this;
  }

  Samples ph(double v) {
    ph = OptionalDouble.of(v);
    return this;
  }

  Samples ions(Ions v) {
    ions = v;
    return this;
  }

  Samples laboratory(String v) {
    laboratory = v;
    return this;
  }

  Samples date(String iso) {
    date = Optional.of(LocalDate.parse(iso));
    return this;
  }

  Samples core() {
    pair = PairKind.CORE;
    return this;
  }

  Samples rested(double hours) {
    rested = OptionalDouble.of(hours);
    return this;
  }

  Samples row(int v) {
    row = v;
    return this;
  }

  /** The same row with a value of the user's own column. */
  static Sample withProperty(Sample s, double value) {
    return new Sample(
        s.id(),
        s.field(),
        s.place(),
        s.depth(),
        s.method(),
        s.reading(),
        s.ec(),
        s.temperatureC(),
        s.temperatureCompensated(),
        s.soil(),
        s.ions(),
        s.laboratory(),
        s.date(),
        s.pair(),
        s.restedH(),
        s.composite(),
        s.source(),
        new Extras(
            OptionalDouble.of(value),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            "",
            "",
            OptionalInt.empty()));
  }

  /** The same row on another line of the file. */
  static Sample copyRow(Sample s, int row) {
    return new Sample(
        s.id(),
        s.field(),
        s.place(),
        s.depth(),
        s.method(),
        s.reading(),
        s.ec(),
        s.temperatureC(),
        s.temperatureCompensated(),
        s.soil(),
        s.ions(),
        s.laboratory(),
        s.date(),
        s.pair(),
        s.restedH(),
        s.composite(),
        new SourceRow(s.source().file(), row));
  }

  Soil soil() {
    return new Soil(texture, clay, sp, gypsum, OptionalDouble.empty(), om, bulkDensity, cec, ph);
  }

  Sample get() {
    return new Sample(
        id,
        field,
        place,
        depth,
        method,
        kind,
        ec,
        temperatureC,
        compensated,
        soil(),
        ions,
        laboratory,
        date,
        pair,
        rested,
        place.isEmpty(),
        new SourceRow("samples.csv", row));
  }
}
