package fieldsalt.handover.table;

import fieldsalt.geo.RanchProjection;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Properties;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ByteOrderValues;
import org.locationtech.jts.io.WKBWriter;
import org.sqlite.JDBC;
import org.sqlite.SQLiteConnection;

/**
 * GeoPackage 1.3 (OGC 12-128r17): feature tables with a spatial index, in metres of the ranch's
 * projection. The time of change that the format asks for is fixed, so that the same layers give
 * the same bytes.
 */
public final class GeoPackageWriter {
  private static final String CHANGED = "2000-01-01T00:00:00.000Z";
  private final Connection database;
  private final RanchProjection projection;
  private final int srs;

  private GeoPackageWriter(Connection database, RanchProjection projection) {
    this.database = database;
    this.projection = projection;
    this.srs = projection.epsg().orElse(-1);
  }

  /** Writes the layers into a new file; a local system gets the code -1, "undefined Cartesian". */
  public static void write(Path file, List<Layer> layers, RanchProjection projection)
      throws IOException {
    try (Connection memory = new JDBC().connect("jdbc:sqlite::memory:", new Properties())) {
      new GeoPackageWriter(memory, projection).all(layers);
      byte[] bytes = memory.unwrap(SQLiteConnection.class).serialize("main");
      Files.write(file, bytes, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    } catch (SQLException e) {
      throw new IOException(e.getMessage(), e);
    }
  }

  private void all(List<Layer> layers) throws SQLException {
    run("PRAGMA application_id = 0x47504B47");
    run("PRAGMA user_version = 10300");
    database.setAutoCommit(false);
    for (String table : GeoPackageSql.REQUIRED_TABLES) {
      run(table);
    }
    referenceSystems();
    for (Layer layer : layers) {
      layer(layer);
    }
    database.commit();
  }

  private void run(String sql) throws SQLException {
    try (Statement statement = database.createStatement()) {
      statement.execute(sql);
    }
  }

  private void insert(String table, Object... values) throws SQLException {
    String marks = "?" + ", ?".repeat(values.length - 1);
    try (PreparedStatement insert =
        database.prepareStatement("INSERT INTO " + table + " VALUES (" + marks + ")")) {
      for (int i = 0; i < values.length; i++) {
        insert.setObject(i + 1, values[i]);
      }
      insert.executeUpdate();
    }
  }

  private void referenceSystems() throws SQLException {
    String table = "gpkg_spatial_ref_sys";
    insert(table, "Undefined Cartesian", -1, "NONE", -1, "undefined", null);
    insert(table, "Undefined geographic", 0, "NONE", 0, "undefined", null);
    insert(table, "WGS 84", 4326, "EPSG", 4326, GeoPackageSql.WGS84, "longitude, latitude");
    if (srs > 0 && srs != 4326) {
      insert(table, projection.name(), srs, "EPSG", srs, projection.wkt(), null);
    }
  }

  private void layer(Layer layer) throws SQLException {
    List<Column> columns = Column.of(layer.features());
    String geometryType = layer.points() ? "POINT" : "MULTIPOLYGON";
    run(GeoPackageSql.featureTable(layer.name(), geometryType, columns));
    Envelope box = layer.box();
    boolean empty = box.isNull();
    insert(
        "gpkg_contents",
        layer.name(),
        "features",
        layer.name(),
        layer.what(),
        CHANGED,
        empty ? null : box.getMinX(),
        empty ? null : box.getMinY(),
        empty ? null : box.getMaxX(),
        empty ? null : box.getMaxY(),
        srs);
    insert("gpkg_geometry_columns", layer.name(), "geom", geometryType, srs, 0, 0);
    rows(layer, columns);
    index(layer);
  }

  private void rows(Layer layer, List<Column> columns) throws SQLException {
    String marks = ", ?".repeat(columns.size());
    try (PreparedStatement insert =
        database.prepareStatement(
            "INSERT INTO \"" + layer.name() + "\" VALUES (?, ?" + marks + ")")) {
      for (int i = 0; i < layer.features().size(); i++) {
        insert.setInt(1, i + 1);
        insert.setBytes(2, blob(layer.features().get(i).shape(), layer.points()));
        for (int c = 0; c < columns.size(); c++) {
          insert.setObject(3 + c, columns.get(c).values().get(i));
        }
        insert.addBatch();
      }
      insert.executeBatch();
    }
  }

  private byte[] blob(Geometry shape, boolean point) {
    Geometry stored = point ? shape : Layer.multi(shape);
    byte[] wkb = new WKBWriter(2, ByteOrderValues.LITTLE_ENDIAN).write(stored);
    boolean boxed = !point && !stored.isEmpty();
    ByteBuffer blob =
        ByteBuffer.allocate(8 + (boxed ? 32 : 0) + wkb.length).order(ByteOrder.LITTLE_ENDIAN);
    int flags = 1 | (boxed ? 2 : 0) | (stored.isEmpty() ? 16 : 0);
    blob.put((byte) 'G').put((byte) 'P').put((byte) 0).put((byte) flags).putInt(srs);
    if (boxed) {
      Envelope box = stored.getEnvelopeInternal();
      blob.putDouble(box.getMinX()).putDouble(box.getMaxX());
      blob.putDouble(box.getMinY()).putDouble(box.getMaxY());
    }
    return blob.put(wkb).array();
  }

  private void index(Layer layer) throws SQLException {
    String index = "rtree_" + layer.name() + "_geom";
    run("CREATE VIRTUAL TABLE \"" + index + "\" USING rtree(id, minx, maxx, miny, maxy)");
    try (PreparedStatement insert =
        database.prepareStatement("INSERT INTO \"" + index + "\" VALUES (?, ?, ?, ?, ?)")) {
      for (int i = 0; i < layer.features().size(); i++) {
        Envelope box = layer.features().get(i).shape().getEnvelopeInternal();
        if (!box.isNull()) {
          insert.setInt(1, i + 1);
          insert.setDouble(2, box.getMinX());
          insert.setDouble(3, box.getMaxX());
          insert.setDouble(4, box.getMinY());
          insert.setDouble(5, box.getMaxY());
          insert.addBatch();
        }
      }
      insert.executeBatch();
    }
    insert(
        "gpkg_extensions",
        layer.name(),
        "geom",
        "gpkg_rtree_index",
        "http://www.geopackage.org/spec120/#extension_rtree",
        "write-only");
    for (String trigger : GeoPackageSql.indexTriggers(layer.name())) {
      run(trigger);
    }
  }
}
