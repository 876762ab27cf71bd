package fieldsalt.handover.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.handover.Gdal;
import fieldsalt.handover.Handover;
import fieldsalt.handover.SmallRanch;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBReader;

/** The requirements of OGC 12-128r17 (GeoPackage 1.3) that a file of features must meet. */
class GeoPackageWriterTest {
  @TempDir Path dir;
  private Connection database;

  @BeforeEach
  void write() throws IOException, SQLException {
    Handover.write(dir, SmallRanch.of("North", "South"));
    database = DriverManager.getConnection("jdbc:sqlite:" + dir.resolve("fieldsalt.gpkg"));
  }

  @AfterEach
  void close() throws SQLException {
    database.close();
  }

  private List<List<Object>> rows(String sql) throws SQLException {
    try (Statement statement = database.createStatement();
        ResultSet result = statement.executeQuery(sql)) {
      List<List<Object>> rows = new ArrayList<>();
      while (result.next()) {
        List<Object> row = new ArrayList<>();
        for (int c = 1; c <= result.getMetaData().getColumnCount(); c++) {
          row.add(result.getObject(c));
        }
        rows.add(row);
      }
      return rows;
    }
  }

  /** Requirements 1 and 2. */
  @Test
  void theHeaderSaysGeoPackage13() throws IOException, SQLException {
    byte[] head = Arrays.copyOf(Files.readAllBytes(dir.resolve("fieldsalt.gpkg")), 72);
    assertThat(new String(head, 0, 15, java.nio.charset.StandardCharsets.US_ASCII))
        .isEqualTo("SQLite format 3");
    assertThat(new String(head, 68, 4, java.nio.charset.StandardCharsets.US_ASCII))
        .isEqualTo("GPKG");
    assertThat(rows("PRAGMA user_version")).containsExactly(List.of(10300));
  }

  /** Requirements 6 and 7. */
  @Test
  void theDatabaseIsSound() throws SQLException {
    assertThat(rows("PRAGMA integrity_check")).containsExactly(List.of("ok"));
    assertThat(rows("PRAGMA foreign_key_check")).isEmpty();
  }

  /** Requirements 10, 13, 21, 58: tables 1, 3, 5 and 12 of the standard. */
  @ParameterizedTest
  @CsvSource({
    "gpkg_spatial_ref_sys,"
        + " srs_name srs_id organization organization_coordsys_id definition description",
    "gpkg_contents, table_name data_type identifier description last_change min_x min_y max_x max_y"
        + " srs_id",
    "gpkg_geometry_columns, table_name column_name geometry_type_name srs_id z m",
    "gpkg_extensions, table_name column_name extension_name definition scope"
  })
  void theRequiredTablesHaveTheRequiredColumns(String table, String columns) throws SQLException {
    assertThat(rows("SELECT name FROM pragma_table_info('" + table + "')"))
        .extracting(row -> row.get(0))
        .isEqualTo(List.of((Object[]) columns.split(" ")));
  }

  /** Requirement 11: the three records every file has; 12: every system used is described. */
  @Test
  void theRequiredSystemsAreThere() throws SQLException {
    assertThat(rows("SELECT srs_id, organization FROM gpkg_spatial_ref_sys ORDER BY srs_id"))
        .containsExactly(
            List.of(-1, "NONE"), List.of(0, "NONE"), List.of(4326, "EPSG"), List.of(32612, "EPSG"));
    assertThat(rows("SELECT DISTINCT srs_id FROM gpkg_contents")).containsExactly(List.of(32612));
  }

  @Test
  void theContentsNameTheLayersWithAFixedTime() throws SQLException {
    assertThat(rows("SELECT table_name, data_type, last_change FROM gpkg_contents"))
        .containsExactly(
            List.of("zones", "features", "2000-01-01T00:00:00.000Z"),
            List.of("samples", "features", "2000-01-01T00:00:00.000Z"),
            List.of("fields", "features", "2000-01-01T00:00:00.000Z"));
    assertThat(rows("SELECT geometry_type_name, z, m FROM gpkg_geometry_columns"))
        .containsExactly(
            List.of("MULTIPOLYGON", 0, 0), List.of("POINT", 0, 0), List.of("MULTIPOLYGON", 0, 0));
  }

  /** Requirement 19: the header before the geometry; table 4: its box in x, x, y, y order. */
  @ParameterizedTest
  @CsvSource({"zones", "samples", "fields"})
  void everyGeometryHasItsHeaderAndItsPlaceInTheIndex(String layer)
      throws SQLException, ParseException {
    List<List<Object>> rows = rows("SELECT fid, geom FROM " + layer);
    assertThat(rows).isNotEmpty();
    for (List<Object> row : rows) {
      ByteBuffer blob = ByteBuffer.wrap((byte[]) row.get(1)).order(ByteOrder.LITTLE_ENDIAN);
      assertThat(blob.getShort()).isEqualTo((short) ('G' | 'P' << 8));
      assertThat(blob.get()).isZero();
      int flags = blob.get();
      assertThat(flags & 1).as("little-endian").isEqualTo(1);
      assertThat(blob.getInt()).isEqualTo(32612);
      double[] box = new double[(flags & 14) == 2 ? 4 : 0];
      for (int i = 0; i < box.length; i++) {
        box[i] = blob.getDouble();
      }
      byte[] wkb = new byte[blob.remaining()];
      blob.get(wkb);
      Geometry shape = new WKBReader().read(wkb);
      Envelope envelope = shape.getEnvelopeInternal();
      if (box.length == 4) {
        assertThat(new Envelope(box[0], box[1], box[2], box[3]).equals(envelope)).isTrue();
      } else {
        assertThat(shape.getGeometryType()).isEqualTo("Point");
      }
      List<Object> indexed =
          rows("SELECT minx, maxx, miny, maxy FROM rtree_"
                  + layer
                  + "_geom WHERE id = "
                  + row.get(0))
              .get(0);
      assertThat(((Number) indexed.get(0)).doubleValue())
          .isCloseTo(envelope.getMinX(), within(0.5));
      assertThat(((Number) indexed.get(0)).doubleValue()).isLessThanOrEqualTo(envelope.getMinX());
      assertThat(((Number) indexed.get(3)).doubleValue())
          .isGreaterThanOrEqualTo(envelope.getMaxY());
    }
  }

  /** Requirements 75 to 77 (annex F.3). */
  @Test
  void theIndexIsRegisteredAndKeptByTriggers() throws SQLException {
    assertThat(rows("SELECT table_name, extension_name, scope FROM gpkg_extensions"))
        .containsExactly(
            List.of("zones", "gpkg_rtree_index", "write-only"),
            List.of("samples", "gpkg_rtree_index", "write-only"),
            List.of("fields", "gpkg_rtree_index", "write-only"));
    assertThat(
            rows(
                "SELECT name FROM sqlite_master WHERE type = 'trigger' AND tbl_name = 'zones'"
                    + " ORDER BY name"))
        .extracting(row -> row.get(0))
        .containsExactly(
            "rtree_zones_geom_delete",
            "rtree_zones_geom_insert",
            "rtree_zones_geom_update1",
            "rtree_zones_geom_update2",
            "rtree_zones_geom_update3",
            "rtree_zones_geom_update4");
  }

  /** The triggers are valid SQL and do their work when a program edits a zone. */
  @Test
  void editingWithGdalKeepsTheIndexTrue() throws SQLException {
    Gdal.require("ogrinfo");
    String gpkg = dir.resolve("fieldsalt.gpkg").toString();
    Gdal.run(
        dir,
        "ogrinfo",
        "-q",
        gpkg,
        "-sql",
        "UPDATE zones SET geom = (SELECT geom FROM zones WHERE" + " fid = 4) WHERE fid = 2");
    Gdal.run(dir, "ogrinfo", "-q", gpkg, "-sql", "DELETE FROM zones WHERE fid = 3");
    Gdal.run(
        dir,
        "ogrinfo",
        "-q",
        gpkg,
        "-sql",
        "INSERT INTO zones (geom, zone) SELECT geom, 'copy'" + " FROM zones WHERE fid = 1");
    List<List<Object>> index = rows("SELECT id, minx FROM rtree_zones_geom ORDER BY id");
    assertThat(index).extracting(row -> row.get(0)).containsExactly(1, 2, 4, 5, 6);
    assertThat(index.get(1).get(1)).isEqualTo(index.get(2).get(1));
  }
}
