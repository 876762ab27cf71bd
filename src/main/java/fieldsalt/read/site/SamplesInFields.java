package fieldsalt.read.site;

import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.geo.PlaceM;
import fieldsalt.quantity.Texture;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.read.field.FieldFinder;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.sample.Placing;
import fieldsalt.read.sample.Sample;
import fieldsalt.read.sample.Soil;
import fieldsalt.read.sample.UnplacedSample;
import fieldsalt.read.word.PlainText;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Gives samples their field by position; what a field says of its soil fills in for its samples.
 */
public final class SamplesInFields {
  /** Seven decimals of a degree are a centimetre: nearer than this a site is on the line. */
  private static final double ON_THE_LINE_M = 0.05;

  private final Placing placing;
  private final FieldFinder fields;
  private final Map<String, PlaceM> places = new HashMap<>();
  private final Set<String> twice = new HashSet<>();
  private final Notes notes;

  public SamplesInFields(Placing placing, FieldFinder fields, Notes notes) {
    this.placing = placing;
    this.fields = fields;
    this.notes = notes;
  }

  /** The samples that lie in a field or belong to one, in the order of the rows. */
  public List<Sample> samples(List<UnplacedSample> all) {
    List<Sample> samples = new ArrayList<>();
    for (UnplacedSample unplaced : all) {
      sample(unplaced).map(this::withFieldsSoil).ifPresent(samples::add);
    }
    noteFieldsWithoutSites(samples);
    return samples;
  }

  private Optional<Sample> sample(UnplacedSample unplaced) {
    SourceRow source = unplaced.sample().source();
    if (unplaced.spot().isEmpty()) {
      return composite(unplaced);
    }
    Optional<PlaceM> place = placing.place(unplaced.spot().get(), source, notes);
    Optional<FieldFinder.Hit> hit = place.flatMap(fields::find);
    if (place.isPresent() && hit.isEmpty()) {
      notes.row(
          Code.OUTSIDE_FIELDS,
          source,
          "a site more than " + (int) FieldFinder.REACH_M + " m outside every field",
          "left out; check its coordinates");
    }
    if (hit.isEmpty()) {
      return Optional.empty();
    }
    String field = hit.get().field().name();
    if (hit.get().distanceM() > ON_THE_LINE_M) {
      notes.row(
          Code.NEAR_FIELD,
          source,
          "a site "
              + String.format(Locale.ROOT, "%.1f", hit.get().distanceM())
              + " m outside the field "
              + field,
          "counted in that field");
    }
    noteOtherField(unplaced, field);
    noteSecondPlace(unplaced, place.get());
    boolean composite = unplaced.sample().composite();
    return Optional.of(unplaced.sample().withField(field, composite ? Optional.empty() : place));
  }

  private void noteOtherField(UnplacedSample unplaced, String field) {
    Optional<FieldBoundary> named = fields.named(unplaced.namedField());
    if (named.isPresent() && !named.get().name().equals(field)) {
      notes.row(
          Code.FIELD_DIFFERS,
          unplaced.sample().source(),
          "the row names field " + named.get().name() + ", but its coordinates lie in " + field,
          "counted in " + field);
    }
  }

  private void noteSecondPlace(UnplacedSample unplaced, PlaceM place) {
    String id = unplaced.sample().id().toLowerCase(Locale.ROOT);
    PlaceM first = places.putIfAbsent(id, place);
    if (first != null && first.distanceM(place) > FieldFinder.REACH_M && twice.add(id)) {
      notes.row(
          Code.ID_AT_TWO_PLACES,
          unplaced.sample().source(),
          "the id '"
              + PlainText.cut(unplaced.sample().id())
              + "' "
              + Math.round(first.distanceM(place))
              + " m from its first place",
          "used as another site; check the id and the coordinates");
    }
  }

  private Optional<Sample> composite(UnplacedSample unplaced) {
    if (!unplaced.sample().composite()) {
      notes.row(
          Code.NO_PLACE,
          unplaced.sample().source(),
          "no coordinates",
          "left out; give lon and lat, or a file of coordinates by id: sites: FILE (id, lon, lat)");
      return Optional.empty();
    }
    String named = unplaced.namedField();
    boolean onlyOne = named.isBlank() && fields.fields().size() == 1;
    Optional<FieldBoundary> field =
        onlyOne ? Optional.of(fields.fields().get(0)) : fields.named(named);
    if (field.isEmpty()) {
      notes.row(
          Code.COMPOSITE_WITHOUT_FIELD,
          unplaced.sample().source(),
          "a composite sample without coordinates that names "
              + (named.isBlank() ? "no field" : "field '" + PlainText.cut(named) + "', not known"),
          "left out; name its field as the boundaries do, in a column field");
      return Optional.empty();
    }
    return Optional.of(unplaced.sample().withField(field.get().name(), Optional.empty()));
  }

  private Sample withFieldsSoil(Sample sample) {
    FieldBoundary field = fields.named(sample.field()).orElseThrow();
    Soil soil = sample.soil();
    boolean bare = soil.texture() == Texture.UNKNOWN && soil.clayPct().isEmpty();
    return bare ? sample.withSoil(soil.withTexture(field.texture(), field.clayPct())) : sample;
  }

  private void noteFieldsWithoutSites(List<Sample> samples) {
    Set<String> with = new HashSet<>();
    samples.forEach(s -> with.add(s.field()));
    for (FieldBoundary field : fields.fields()) {
      if (!with.contains(field.name())) {
        notes.finding(
            Code.FIELD_WITHOUT_SITES,
            Place.field(field.name()),
            "no site",
            "not mapped; sample it");
      }
    }
  }
}
