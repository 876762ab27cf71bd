package fieldsalt.read.field;

import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.read.file.Notes;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** Finds fields that lie on the same ground. */
public final class Overlaps {
  private static final double SHARED_FENCE_M2 = 100;

  private Overlaps() {}

  /** A finding for each pair of fields that share ground, in the file's order. */
  public static void noteIn(Notes notes, List<FieldBoundary> fields) {
    STRtree index = new STRtree();
    for (int i = 0; i < fields.size(); i++) {
      index.insert(fields.get(i).shapeM().getEnvelopeInternal(), i);
    }
    for (int i = 0; i < fields.size(); i++) {
      TreeSet<Integer> near = new TreeSet<>();
      for (Object other : index.query(fields.get(i).shapeM().getEnvelopeInternal())) {
        near.add((Integer) other);
      }
      for (int other : near.tailSet(i, false)) {
        pair(fields.get(i), fields.get(other), notes);
      }
    }
  }

  private static void pair(FieldBoundary a, FieldBoundary b, Notes notes) {
    Geometry left = a.shapeM();
    Geometry right = b.shapeM();
    double m2 = OverlayNGRobust.overlay(left, right, OverlayNG.INTERSECTION).getArea();
    if (m2 > SHARED_FENCE_M2) {
      notes.finding(
          Code.FIELDS_OVERLAP,
          new Place.Fields(List.of(a.name(), b.name()), ""),
          String.format(Locale.ROOT, "%.2f ha of ground in both fields", m2 / 1e4),
          "counted in both; sites there belong to " + a.name());
    }
  }
}
