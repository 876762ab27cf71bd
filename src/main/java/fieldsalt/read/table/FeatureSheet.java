package fieldsalt.read.table;

import fieldsalt.finding.InputProblem;
import fieldsalt.geo.Projections;
import fieldsalt.read.file.DatumShiftNote;
import fieldsalt.read.file.GeoFeature;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.TableRow;
import fieldsalt.read.word.HeaderText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Point;

/** Features of points as a table: a row per feature, a column per property. */
final class FeatureSheet {
  private FeatureSheet() {}

  static Sheet of(GeoFeature.Collection collection, Notes notes) {
    Set<String> names = new LinkedHashSet<>();
    collection.features().forEach(f -> names.addAll(f.properties().keySet()));
    String[] keys = names.toArray(String[]::new);
    List<TableRow> rows = new ArrayList<>();
    for (GeoFeature feature : collection.features()) {
      String[] cells =
          Arrays.stream(keys)
              .map(key -> feature.properties().getOrDefault(key, ""))
              .toArray(String[]::new);
      rows.add(new TableRow(feature.number(), cells, point(collection, feature)));
    }
    noteDatumShift(collection, rows, notes);
    List<HeaderText> headers = Arrays.stream(keys).map(HeaderText::of).toList();
    return new Sheet(collection.file(), "feature", headers, rows, false);
  }

  private static void noteDatumShift(GeoFeature.Collection file, List<TableRow> rows, Notes notes) {
    Envelope box = new Envelope();
    rows.forEach(row -> row.point().ifPresent(box::expandToInclude));
    if (file.system().isPresent() && !box.isNull()) {
      DatumShiftNote shift =
          new DatumShiftNote(file.file(), Projections.source(file.system().get()));
      shift.add(box);
      shift.noteIn(notes);
    }
  }

  private static Optional<Coordinate> point(GeoFeature.Collection all, GeoFeature feature) {
    Optional<Geometry> geometry = feature.geometry().filter(g -> !g.isEmpty());
    if (geometry.isEmpty()) {
      return Optional.empty();
    }
    Geometry first = geometry.get().getGeometryN(0);
    if (!(first instanceof Point) || geometry.get().getNumGeometries() > 1) {
      throw new InputProblem(
          all.where(feature),
          "a " + geometry.get().getGeometryType(),
          "a Point for each sample",
          "Give boundaries as fields: and points as samples:.");
    }
    Coordinate at = first.getCoordinate();
    return Optional.of(
        all.system().map(s -> Projections.toLonLat(first, s).getCoordinate()).orElse(at));
  }
}
