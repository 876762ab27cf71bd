package fieldsalt.read.site;

import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.geo.PlaceM;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.read.field.FieldFinder;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.sample.Placing;
import fieldsalt.read.sample.Sample;
import fieldsalt.read.sample.Soil;
import fieldsalt.read.sample.Spot;
import fieldsalt.read.sample.UnplacedSample;
import fieldsalt.read.table.LineCells;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Gives rows their field by position; what a field says of its soil fills in for its samples. */
public final class RowsToFields {
  /**
   * How far outside a boundary a site still belongs to the field: a receiver's error and a fence.
   */
  public static final double REACH_M = 15;

  /** Seven decimals of a degree are a centimetre: nearer than this a site stands on the line. */
  private static final double ON_THE_LINE_M = 0.05;

  private final Placing placing;
  private final List<FieldBoundary> fields;
  private final FieldFinder finder;
  private final Map<String, FieldBoundary> byName = new HashMap<>();
  private final Map<String, PlaceM> places = new HashMap<>();
  private final Set<String> twice = new HashSet<>();
  private final Notes notes;

  public RowsToFields(Placing placing, List<FieldBoundary> fields, Notes notes) {
    this.placing = placing;
    this.fields = fields;
    this.finder = new FieldFinder(fields, REACH_M);
    this.notes = notes;
    fields.forEach(f -> byName.put(f.name().toLowerCase(Locale.ROOT), f));
  }

  /** The samples that lie in a field or belong to one, in the order of the rows. */
  public List<Sample> samples(List<UnplacedSample> rows) {
    List<Sample> samples = new ArrayList<>();
    for (UnplacedSample row : rows) {
      sample(row).map(this::withFieldsSoil).ifPresent(samples::add);
    }
    tellEmptyFields(samples);
    return samples;
  }

  private Optional<Sample> sample(UnplacedSample row) {
    SourceRow source = row.sample().source();
    if (row.spot().isEmpty()) {
      return composite(row);
    }
    Optional<PlaceM> place = place(row);
    if (place.isEmpty()) {
      return Optional.empty();
    }
    Optional<FieldFinder.Hit> hit = finder.find(place.get());
    if (hit.isEmpty()) {
      notes.row(
          Code.OUTSIDE_FIELDS,
          source,
          "a site that lies in no field, nor within " + (int) REACH_M + " m of one",
          "left out; check its coordinates");
      return Optional.empty();
    }
    if (hit.get().distanceM() > ON_THE_LINE_M) {
      notes.row(
          Code.NEAR_FIELD,
          source,
          "a site "
              + String.format(Locale.ROOT, "%.1f", hit.get().distanceM())
              + " m outside the field "
              + hit.get().field(),
          "taken as in that field");
    }
    tellOtherField(row, hit.get().field());
    tellSecondPlace(row, place.get());
    boolean composite = row.sample().composite();
    return Optional.of(
        row.sample().withField(hit.get().field(), composite ? Optional.empty() : place));
  }

  private Optional<PlaceM> place(UnplacedSample row) {
    if (!row.spot().get().degrees() && !placing.knowsXy()) {
      notes.problem(
          row.sample().source().file() + " columns x, y",
          "coordinates without a system",
          "their EPSG code, or local",
          "Say crs: EPSG:n (or crs: local) in the job.");
      return Optional.empty();
    }
    Optional<PlaceM> place = placing.place(row.spot().get());
    if (place.isEmpty()) {
      notes.row(
          Code.BAD_COORDINATE,
          row.sample().source(),
          "a place out of reach of the coordinate system: " + row.spot().get(),
          "left out; check that easting or longitude comes first");
    }
    return place;
  }

  private void tellOtherField(UnplacedSample row, String field) {
    FieldBoundary said = byName.get(row.fieldSaid().toLowerCase(Locale.ROOT));
    if (said != null && !said.name().equals(field)) {
      notes.row(
          Code.FIELD_DIFFERS,
          row.sample().source(),
          "the row says field " + said.name() + ", its place lies in " + field,
          "taken as in " + field);
    }
  }

  private void tellSecondPlace(UnplacedSample row, PlaceM place) {
    String id = row.sample().id().toLowerCase(Locale.ROOT);
    PlaceM first = places.putIfAbsent(id, place);
    if (first != null && first.distanceM(place) > REACH_M && twice.add(id)) {
      notes.row(
          Code.ID_AT_TWO_PLACES,
          row.sample().source(),
          "the id '"
              + LineCells.shown(row.sample().id())
              + "' "
              + Math.round(first.distanceM(place))
              + " m from where it stood before",
          "taken as another site; check the id and the coordinates");
    }
  }

  private Optional<Sample> composite(UnplacedSample row) {
    if (!row.sample().composite()) {
      notes.row(
          Code.NO_PLACE,
          row.sample().source(),
          "no coordinates",
          "left out; give lon and lat, or name a file with sites: (id, lon, lat)");
      return Optional.empty();
    }
    String said = row.fieldSaid();
    boolean onlyOne = said.isBlank() && fields.size() == 1;
    FieldBoundary field = onlyOne ? fields.get(0) : byName.get(said.toLowerCase(Locale.ROOT));
    if (field == null) {
      notes.row(
          Code.COMPOSITE_WITHOUT_FIELD,
          row.sample().source(),
          "a composite sample without a place that names "
              + (said.isBlank() ? "no field" : "field '" + LineCells.shown(said) + "', not known"),
          "left out; name its field as the boundaries do, in a column field");
      return Optional.empty();
    }
    return Optional.of(row.sample().withField(field.name(), Optional.empty()));
  }

  private Sample withFieldsSoil(Sample sample) {
    FieldBoundary field = byName.get(sample.field().toLowerCase(Locale.ROOT));
    Soil soil = sample.soil();
    boolean bare = soil.texture() == fieldsalt.quantity.Texture.UNKNOWN && soil.clayPct().isEmpty();
    return bare ? sample.withSoil(soil.withTexture(field.texture(), field.clayPct())) : sample;
  }

  private void tellEmptyFields(List<Sample> samples) {
    Set<String> with = new TreeSet<>();
    samples.forEach(s -> with.add(s.field()));
    for (FieldBoundary field : fields) {
      if (!with.contains(field.name())) {
        notes.finding(
            Code.FIELD_WITHOUT_SITES,
            Place.field(field.name()),
            "no site",
            "not mapped; sample it");
      }
    }
  }

  /** How many rows would lie in a field if their coordinates were changed. */
  public int countInside(List<UnplacedSample> rows, java.util.function.UnaryOperator<Spot> change) {
    int inside = 0;
    for (UnplacedSample row : rows) {
      Optional<PlaceM> place =
          row.spot()
              .filter(Spot::degrees)
              .map(change)
              .filter(s -> Math.abs(s.a()) <= 180 && Math.abs(s.b()) <= 84)
              .flatMap(placing::place);
      inside += place.flatMap(finder::find).isPresent() ? 1 : 0;
    }
    return inside;
  }
}
