package fieldsalt.basis;

import fieldsalt.geo.PlaceM;
import fieldsalt.quantity.DepthRange;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.quantity.Texture;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.sample.Ec;
import fieldsalt.read.sample.Extras;
import fieldsalt.read.sample.Ions;
import fieldsalt.read.sample.PairKind;
import fieldsalt.read.sample.Sample;
import fieldsalt.read.sample.Soil;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Builds invented rows for tests: a loam at 0-30 cm by 1:5 extract, unless told otherwise. */
public final class Samples {
  public String id = "A1";
  public String field = "north";
  Optional<PlaceM> place = Optional.of(new PlaceM(100, 200));
  public DepthRange depth = new DepthRange(0, 30);
  public Optional<Method> method = Optional.of(Method.ONE_TO_FIVE);
  ReadingKind kind = ReadingKind.EXTRACT;
  public Optional<Ec> ec = Optional.of(new Ec(0.5, Ec.Censored.NO));
  OptionalDouble temperatureC = OptionalDouble.empty();
  boolean compensated = true;
  public Texture texture = Texture.LOAM;
  public OptionalDouble clay = OptionalDouble.empty();
  public OptionalDouble sp = OptionalDouble.empty();
  public OptionalDouble gypsum = OptionalDouble.empty();
  OptionalDouble om = OptionalDouble.empty();
  public OptionalDouble bulkDensity = OptionalDouble.empty();
  public OptionalDouble cec = OptionalDouble.empty();
  public OptionalDouble ph = OptionalDouble.empty();
  public Ions ions = Ions.none();
  String laboratory = "Lab";
  public Optional<LocalDate> date = Optional.empty();
  PairKind pair = PairKind.SPLIT;
  OptionalDouble rested = OptionalDouble.empty();
  public int row = 2;

  public static Samples sample() {
    return new Samples();
  }

  public Samples id(String v) {
    id = v;
    place = Optional.of(new PlaceM(v.hashCode() % 1000, v.hashCode() % 777));
    return this;
  }

  public Samples field(String v) {
    field = v;
    return this;
  }

  public Samples nowhere() {
    place = Optional.empty();
    return this;
  }

  public Samples depth(double top, double bottom) {
    depth = new DepthRange(top, bottom);
    return this;
  }

  public Samples method(Method m, ReadingKind k) {
    method = Optional.of(m);
    kind = k;
    return this;
  }

  Samples noMethod() {
    method = Optional.empty();
    return this;
  }

  public Samples paste(double dSm) {
    laboratory = "Paste lab";
    return method(Method.PASTE, ReadingKind.EXTRACT).ec(dSm);
  }

  public Samples ec(double dSm) {
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

  public Samples noEc() {
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

  public Samples texture(Texture v) {
    texture = v;
    return this;
  }

  public Samples clay(double v) {
    clay = OptionalDouble.of(v);
    return this;
  }

  public Samples sp(double v) {
    sp = OptionalDouble.of(v);
    return this;
  }

  public Samples gypsum(double v) {
    gypsum = OptionalDouble.of(v);
    return this;
  }

  Samples om(double v) {
    om = OptionalDouble.of(v);
    return this;
  }

  public Samples bulkDensity(double v) {
    bulkDensity = OptionalDouble.of(v);
    return this;
  }

  public Samples cec(double v) {
    cec = OptionalDouble.of(v);
    return this;
  }

  public Samples ph(double v) {
    ph = OptionalDouble.of(v);
    return this;
  }

  public Samples ions(Ions v) {
    ions = v;
    return this;
  }

  Samples laboratory(String v) {
    laboratory = v;
    return this;
  }

  public Samples date(String iso) {
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

  public Samples row(int v) {
    row = v;
    return this;
  }

  /** The same row with a value of the user's own column. */
  public static Sample withProperty(Sample s, double value) {
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
        new Extras(OptionalDouble.of(value), OptionalDouble.empty(), "", OptionalInt.empty()));
  }

  /** Nothing out of the ordinary. */
  public static Extras noExtras() {
    OptionalDouble none = OptionalDouble.empty();
    return new Extras(none, none, "", OptionalInt.empty());
  }

  /** The same row on another line of the file. */
  public static Sample copyRow(Sample s, int row) {
    return s.withSource(new SourceRow(s.source().file(), row));
  }

  public Soil soil() {
    return new Soil(texture, clay, sp, gypsum, OptionalDouble.empty(), om, bulkDensity, cec, ph);
  }

  public Sample get() {
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
        new SourceRow("samples.csv", row),
        noExtras());
  }
}
