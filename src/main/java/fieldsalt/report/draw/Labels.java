package fieldsalt.report.draw;

import fieldsalt.report.markup.Markup;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/** Names on a map, each where its shape is widest, left out where it would cover another. */
public final class Labels {
  private static final int LONGEST = 16;
  private static final Pattern NUMBER = Pattern.compile("-[0-9]{1,4}$");
  private static final double LETTER = 11;
  private static final double LINE = 21;
  private final Markup page;
  private final Frame frame;
  private final List<Envelope> taken = new ArrayList<>();

  public Labels(Markup page, Frame frame) {
    this.page = page;
    this.frame = frame;
  }

  /** The name of a zone inside it, if there is room. */
  public void zone(String name, Geometry shapeM) {
    Geometry coarse = DouglasPeuckerSimplifier.simplify(shapeM, 2 / frame.perM());
    if (coarse.isEmpty() || !coarse.isValid()) {
      return;
    }
    Point middle = MaximumInscribedCircle.getCenter(coarse, 4 / frame.perM());
    double x = within(frame.x(middle.getX()), name);
    double y = frame.y(middle.getY());
    double room = 2 * middle.distance(coarse.getBoundary()) * frame.perM();
    if (room > LINE && take(x, y, name)) {
      write(name, x, y + LINE / 3, "zone-name");
    }
  }

  /** The name of a field above it. */
  public void field(String name, Geometry shapeM) {
    Envelope box = shapeM.getEnvelopeInternal();
    double x = within(frame.x(box.centre().x), name);
    write(name, x, frame.y(box.getMaxY()) - 8, "field-name");
  }

  /** Moved so that the whole name is on the map. */
  private double within(double x, String name) {
    double half = half(name);
    return Math.max(half, Math.min(frame.width() - half, x));
  }

  private static double half(String name) {
    return shortened(name).codePointCount(0, shortened(name).length()) * LETTER / 2;
  }

  private boolean take(double x, double y, String name) {
    double half = half(name);
    Envelope box = new Envelope(x - half, x + half, y - LINE / 2, y + LINE / 2);
    boolean free = taken.stream().noneMatch(box::intersects);
    if (free) {
      taken.add(box);
    }
    return free;
  }

  private void write(String name, double x, double y, String kind) {
    page.line(
        "text",
        shortened(name),
        "x",
        Chart.number(x),
        "y",
        Chart.number(y),
        "class",
        kind,
        "text-anchor",
        "middle",
        "aria-hidden",
        "true");
  }

  /** At most 16 characters, never half of one; what tells zones of a field apart stays. */
  static String shortened(String name) {
    if (name.codePointCount(0, name.length()) <= LONGEST) {
      return name;
    }
    Matcher number = NUMBER.matcher(name);
    String end = number.find() ? number.group() : "";
    return name.substring(0, name.offsetByCodePoints(0, LONGEST - 1 - end.length())) + "…" + end;
  }
}
