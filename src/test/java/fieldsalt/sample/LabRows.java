package fieldsalt.sample;

import fieldsalt.basis.Samples;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.quantity.Texture;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.sample.Ec;
import fieldsalt.read.sample.Ions;
import fieldsalt.read.sample.PairKind;
import fieldsalt.read.sample.Sample;
import fieldsalt.read.sample.Soil;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Rows of the invented sheets as the reader would hand them on, in local metres. */
public final class LabRows {
  private LabRows() {}

  /** One sample a row, in the rows' order. */
  public static List<Sample> samples(List<LabRow> rows) {
    List<Sample> samples = new ArrayList<>();
    rows.forEach(r -> samples.add(sample(r, samples.size() + 2)));
    return List.copyOf(samples);
  }

  private static Sample sample(LabRow row, int line) {
    OptionalDouble none = OptionalDouble.empty();
    Texture texture = Texture.valueOf(row.texture().toUpperCase(Locale.ROOT).replace(' ', '_'));
    return new Sample(
        row.id(),
        row.field(),
        Optional.of(row.place()),
        row.depth(),
        Optional.of(row.method()),
        ReadingKind.EXTRACT,
        Optional.of(new Ec(row.dSPerM(), Ec.Censored.NO)),
        none,
        true,
        Soil.unknown().withTexture(texture, none),
        Ions.none(),
        row.lab(),
        Optional.of(LocalDate.of(2026, 3, 10)),
        PairKind.SPLIT,
        none,
        false,
        new SourceRow("samples.csv", line),
        Samples.noExtras());
  }

  /** The fields' boundaries in local metres. */
  public static List<FieldBoundary> boundaries(List<InventedField> fields) {
    return fields.stream()
        .map(
            f ->
                new FieldBoundary(
                    f.name(),
                    f.shapeM(),
                    Optional.of(f.crop()),
                    Texture.UNKNOWN,
                    OptionalDouble.empty()))
        .toList();
  }
}
