package fieldsalt.read.file;

import fieldsalt.finding.InputProblem;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBReader;
import org.sqlite.SQLiteConfig;

/**
 * The one polygon layer of a GeoPackage (OGC 12-128). Several layers: the one called {@code
 * fields}, else a problem that lists them.
 */
public final class GeoPackageFile {
  private final InputFile file;

  private GeoPackageFile(InputFile file) {
    this.file = file;
  }

  private record Layer(String table, String column, int srs, String kind) {}

  public static boolean isOne(InputFile file) {
    return file.startsWith('S', 'Q', 'L', 'i', 't', 'e', ' ', 'f', 'o', 'r', 'm', 'a', 't');
  }

  public static GeoFeature.Collection read(InputFile file) {
    return new GeoPackageFile(file).read();
  }

  /** Reads a copy, so that no journal appears beside the user's file. */
  private GeoFeature.Collection read() {
    try {
      Path copy = Files.createTempFile("fields", ".gpkg");
      try {
        Files.write(copy, file.bytes());
        return open(copy);
      } finally {
        Files.deleteIfExists(copy);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private GeoFeature.Collection open(Path copy) {
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(true);
    try (Connection db = config.createConnection("jdbc:sqlite:" + copy)) {
      Layer layer = layer(layers(db));
      return new GeoFeature.Collection(file.name(), features(db, layer), system(db, layer));
    } catch (SQLException | ParseException | RuntimeException e) {
      if (e instanceof InputProblem problem) {
        throw problem;
      }
      throw new InputProblem(
              file.name(),
              "a file that is not a valid GeoPackage",
              "a GeoPackage with a layer of polygons",
              "Export it again, or as GeoJSON.")
          .because(e);
    }
  }

  private static List<Layer> layers(Connection db) throws SQLException {
    List<Layer> layers = new ArrayList<>();
    try (Statement query = db.createStatement();
        ResultSet rows =
            query.executeQuery(
                "SELECT table_name, column_name, srs_id, geometry_type_name"
                    + " FROM gpkg_geometry_columns ORDER BY table_name")) {
      while (rows.next()) {
        layers.add(
            new Layer(rows.getString(1), rows.getString(2), rows.getInt(3), rows.getString(4)));
      }
    }
    return layers;
  }

  private Layer layer(List<Layer> all) {
    List<Layer> areas =
        all.stream().filter(l -> l.kind().matches("(?i).*(polygon|surface|geometry).*")).toList();
    List<Layer> named = areas.stream().filter(l -> l.table().equalsIgnoreCase("fields")).toList();
    if (areas.size() == 1 || named.size() == 1) {
      return areas.size() == 1 ? areas.get(0) : named.get(0);
    }
    throw new InputProblem(
        file.name(),
        areas.isEmpty()
            ? "no layer of polygons"
            : "the layers " + String.join(", ", areas.stream().map(Layer::table).toList()),
        "one layer of polygons, or one that is called fields",
        "Export the boundaries into a file of their own.");
  }

  private static Optional<String> system(Connection db, Layer layer) throws SQLException {
    if (layer.srs() <= 0) {
      return Optional.empty();
    }
    try (PreparedStatement query =
        db.prepareStatement("SELECT * FROM gpkg_spatial_ref_sys WHERE srs_id = ?")) {
      query.setInt(1, layer.srs());
      try (ResultSet row = query.executeQuery()) {
        return row.next() ? system(row) : Optional.of("EPSG:" + layer.srs());
      }
    }
  }

  /** A code of the EPSG registry; else the text, in version 2 where version 1 cannot express it. */
  private static Optional<String> system(ResultSet row) throws SQLException {
    int code = row.getInt("organization_coordsys_id");
    if ("EPSG".equalsIgnoreCase(row.getString("organization"))) {
      return code == 4326 ? Optional.empty() : Optional.of("EPSG:" + code);
    }
    String version1 = row.getString("definition");
    boolean isComplete = version1 != null && version1.indexOf('[') > 0;
    for (int i = 1; i <= row.getMetaData().getColumnCount() && !isComplete; i++) {
      if (row.getMetaData().getColumnName(i).equalsIgnoreCase("definition_12_063")) {
        return Optional.of(String.valueOf(row.getString(i)));
      }
    }
    return Optional.of(String.valueOf(version1));
  }

  private List<GeoFeature> features(Connection db, Layer layer)
      throws SQLException, ParseException {
    List<GeoFeature> features = new ArrayList<>();
    String table = layer.table().replace("\"", "\"\"");
    try (Statement query = db.createStatement();
        ResultSet rows = query.executeQuery("SELECT * FROM \"" + table + "\"")) {
      while (rows.next()) {
        features.add(feature(rows, layer, features.size() + 1));
      }
    }
    return features;
  }

  private static GeoFeature feature(ResultSet row, Layer layer, int number)
      throws SQLException, ParseException {
    Map<String, String> properties = new LinkedHashMap<>();
    Optional<Geometry> geometry = Optional.empty();
    ResultSetMetaData columns = row.getMetaData();
    for (int i = 1; i <= columns.getColumnCount(); i++) {
      String name = columns.getColumnName(i);
      if (name.equalsIgnoreCase(layer.column())) {
        byte[] blob = row.getBytes(i);
        geometry = blob == null ? Optional.empty() : Optional.of(geometry(blob));
      } else if (row.getObject(i) != null && !(row.getObject(i) instanceof byte[])) {
        properties.put(name, row.getString(i).strip());
      }
    }
    return new GeoFeature(number, geometry, properties);
  }

  /** A GeoPackage blob is a header (magic, version, flags, system, envelope) before plain WKB. */
  private static Geometry geometry(byte[] blob) throws ParseException {
    if (blob.length < 8 || blob[0] != 'G' || blob[1] != 'P') {
      throw new ParseException("no GeoPackage geometry");
    }
    int[] envelopeBytes = {0, 32, 48, 48, 64};
    int kind = (blob[3] >> 1) & 7;
    if (kind >= envelopeBytes.length) {
      throw new ParseException("unknown envelope");
    }
    int start = 8 + envelopeBytes[kind];
    byte[] wkb = new byte[Math.max(0, blob.length - start)];
    ByteBuffer.wrap(blob).order(ByteOrder.LITTLE_ENDIAN).position(start).get(wkb);
    return new WKBReader().read(wkb);
  }
}
