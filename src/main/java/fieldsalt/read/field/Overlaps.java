package fieldsalt.read.field;

import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.read.file.Notes;
import java.util.List;
import java.util.Locale;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** Tells which fields lie on the same ground. */
public final class Overlaps {
  private static final double SHARED_FENCE_M2 = 100;

  private Overlaps() {}

  public static void tell(List<FieldBoundary> fields, Notes notes) {
    for (int i = 0; i < fields.size(); i++) {
      for (int j = i + 1; j < fields.size(); j++) {
        pair(fields.get(i), fields.get(j), notes);
      }
    }
  }

  private static void pair(FieldBoundary a, FieldBoundary b, Notes notes) {
    Geometry left = a.shapeM();
    Geometry right = b.shapeM();
    if (!left.getEnvelopeInternal().intersects(right.getEnvelopeInternal())) {
      return;
    }
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
