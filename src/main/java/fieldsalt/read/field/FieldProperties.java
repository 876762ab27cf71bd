package fieldsalt.read.field;

import fieldsalt.facts.Plausibility;
import fieldsalt.finding.Code;
import fieldsalt.quantity.Texture;
import fieldsalt.read.file.GeoFeature;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.table.Limits;
import fieldsalt.read.word.NumberCell;
import fieldsalt.read.word.PlainText;
import fieldsalt.read.word.TextureWords;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;

/** What a boundary file says of a field beside its shape and crop. */
final class FieldProperties {
  private static final Plausibility CLAY = Plausibility.of("clay_pct");

  private final Function<GeoFeature, SourceRow> source;
  private final Notes notes;

  FieldProperties(Function<GeoFeature, SourceRow> source, Notes notes) {
    this.source = source;
    this.notes = notes;
  }

  /** What the file says of one field's water, irrigation and ground, as keys of the job. */
  Map<String, String> settings(GeoFeature feature) {
    Map<String, String> settings = new TreeMap<>();
    FieldJobs.PROPERTIES.forEach(
        (property, key) -> {
          Optional<String> text =
              FieldsReader.property(feature, List.of(property)).map(String::strip);
          Optional<String> problem = text.flatMap(t -> JobDocument.problemWith(key, t));
          if (problem.isPresent()) {
            notes.row(
                Code.IMPOSSIBLE,
                source.apply(feature),
                property + " '" + PlainText.cut(text.get()) + "'",
                "left out; " + key + " is " + problem.get());
          } else {
            text.ifPresent(t -> settings.put(key, t));
          }
        });
    return settings;
  }

  Texture texture(GeoFeature feature) {
    Optional<String> word = FieldsReader.property(feature, List.of("texture", "soil_texture"));
    Optional<Texture> texture = word.flatMap(TextureWords::of);
    if (word.isPresent() && texture.isEmpty()) {
      notes.row(
          Code.TEXTURE_UNKNOWN,
          source.apply(feature),
          "the texture '" + PlainText.cut(word.get()) + "', which is not known",
          "taken as unknown; use USDA classes such as clay loam");
    }
    return texture.orElse(Texture.UNKNOWN);
  }

  OptionalDouble clay(GeoFeature feature) {
    Optional<String> text = FieldsReader.property(feature, List.of("clay_pct", "clay"));
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    NumberCell cell = NumberCell.parse(text.get(), false);
    if (cell.kind() == NumberCell.Kind.NUMBER && !CLAY.refuses(cell.value())) {
      return OptionalDouble.of(cell.value());
    }
    notes.row(
        Code.IMPOSSIBLE,
        source.apply(feature),
        "clay_pct '" + PlainText.cut(text.get()) + "'",
        "left out; possible is " + Limits.possible(CLAY));
    return OptionalDouble.empty();
  }
}
