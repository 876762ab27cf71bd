package fieldsalt.surface;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.geo.PlaceM;
import fieldsalt.quantity.Texture;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.choice.MethodByField;
import fieldsalt.surface.choice.Tried;
import fieldsalt.surface.site.Observations;
import fieldsalt.surface.site.Points;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;

/** Readings and fields for tests of the surface. */
public final class SurfaceCases {
  static final GeometryFactory JTS = new GeometryFactory();

  private SurfaceCases() {}

  /** Columns of a table of the test resources, by name; text columns are left out. */
  public static Map<String, double[]> table(String name) {
    try (InputStream in = SurfaceCases.class.getResourceAsStream(name)) {
      return columns(new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Map<String, double[]> columns(List<String> lines) {
    String[] names = lines.get(0).replace("\"", "").split(",");
    Map<String, double[]> table = new LinkedHashMap<>();
    for (int c = 0; c < names.length; c++) {
      double[] column = new double[lines.size() - 1];
      boolean numeric = true;
      for (int r = 0; r < column.length; r++) {
        String cell = lines.get(r + 1).split(",")[c];
        if (cell.matches("[-+.0-9eE]+")) {
          column[r] = Double.parseDouble(cell);
        } else {
          numeric = false;
        }
      }
      if (numeric) {
        table.put(names[c], column);
      }
    }
    return table;
  }

  public static SiteReadings.Site site(String id, String field, double x, double y) {
    return new SiteReadings.Site(id, field, new PlaceM(x, y), Optional.empty());
  }

  public static SiteReadings.Row paste(int site, double value, double ownVariance) {
    return new SiteReadings.Row(site, value, ownVariance, List.of(), true, "paste", "A");
  }

  public static SiteReadings.Row cheap(int site, double value, double ownVariance, int offset) {
    return new SiteReadings.Row(
        site, value, ownVariance, List.of(new SiteReadings.Loading(offset, 1)), false, "1:5", "B");
  }

  public static SiteReadings readings(
      Scale scale,
      List<SiteReadings.Site> sites,
      List<SiteReadings.Row> rows,
      double... offsetVariances) {
    double[][] covariance = new double[offsetVariances.length][offsetVariances.length];
    List<String> names = new ArrayList<>();
    for (int k = 0; k < covariance.length; k++) {
      covariance[k][k] = offsetVariances[k];
      names.add("offset " + k);
    }
    return new SiteReadings("ECe", "dS/m", scale, sites, rows, names, covariance, List.of());
  }

  /** The same offsets with other sites and rows. */
  static SiteReadings with(
      SiteReadings r, List<SiteReadings.Site> sites, List<SiteReadings.Row> rows) {
    return new SiteReadings(
        r.property(),
        r.unit(),
        r.scale(),
        sites,
        rows,
        r.offsets(),
        r.offsetCovariance(),
        r.findings());
  }

  /** The same row at another site, with another variance of its own. */
  static SiteReadings.Row row(SiteReadings.Row r, int site, double own) {
    return new SiteReadings.Row(
        site, r.value(), own, r.loadings(), r.paste(), r.method(), r.laboratory());
  }

  /** One field, one exact row a site. */
  public static SiteReadings exact(Scale scale, double[] x, double[] y, double[] z) {
    List<SiteReadings.Site> sites = new ArrayList<>();
    List<SiteReadings.Row> rows = new ArrayList<>();
    for (int i = 0; i < x.length; i++) {
      sites.add(site(String.format("s%05d", i), "one", x[i], y[i]));
      rows.add(paste(i, z[i], 0));
    }
    return readings(scale, sites, rows);
  }

  public static double[] logs(double[] z) {
    return java.util.Arrays.stream(z).map(Math::log).toArray();
  }

  public static FieldBoundary rectangle(
      String name, double west, double south, double east, double north) {
    return new FieldBoundary(
        name,
        JTS.toGeometry(new Envelope(west, east, south, north)),
        Optional.empty(),
        Texture.UNKNOWN,
        OptionalDouble.empty());
  }

  public static FieldBoundary polygon(String name, double... xy) {
    Coordinate[] ring = new Coordinate[xy.length / 2];
    for (int i = 0; i < ring.length; i++) {
      ring[i] = new Coordinate(xy[2 * i], xy[2 * i + 1]);
    }
    return new FieldBoundary(
        name, JTS.createPolygon(ring), Optional.empty(), Texture.UNKNOWN, OptionalDouble.empty());
  }

  public static Points points(Observations data, int part, double x, double y) {
    return Points.of(data, part, List.of(new PlaceM(x, y)));
  }

  /** One method for all fields of its data. */
  public static MethodByField everywhere(Tried method) {
    Set<String> fields =
        method.data().parts().stream().map(p -> p.field()).collect(Collectors.toSet());
    return new MethodByField(List.of(new MethodByField.Group(fields, method)));
  }
}
