package fieldsalt.handover.table;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** The tables and triggers that OGC 12-128r17 asks for, annexes C and F.3. */
final class GeoPackageSql {
  static final String WGS84 =
      "GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS 84\",6378137,298.257223563,"
          + "AUTHORITY[\"EPSG\",\"7030\"]],AUTHORITY[\"EPSG\",\"6326\"]],"
          + "PRIMEM[\"Greenwich\",0,AUTHORITY[\"EPSG\",\"8901\"]],"
          + "UNIT[\"degree\",0.0174532925199433,AUTHORITY[\"EPSG\",\"9122\"]],"
          + "AXIS[\"Latitude\",NORTH],AXIS[\"Longitude\",EAST],AUTHORITY[\"EPSG\",\"4326\"]]";

  static final List<String> REQUIRED_TABLES =
      List.of(
          """
          CREATE TABLE gpkg_spatial_ref_sys (
            srs_name TEXT NOT NULL,
            srs_id INTEGER NOT NULL PRIMARY KEY,
            organization TEXT NOT NULL,
            organization_coordsys_id INTEGER NOT NULL,
            definition TEXT NOT NULL,
            description TEXT)""",
          """
          CREATE TABLE gpkg_contents (
            table_name TEXT NOT NULL PRIMARY KEY,
            data_type TEXT NOT NULL,
            identifier TEXT UNIQUE,
            description TEXT DEFAULT '',
            last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')),
            min_x DOUBLE,
            min_y DOUBLE,
            max_x DOUBLE,
            max_y DOUBLE,
            srs_id INTEGER,
            CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id)
              REFERENCES gpkg_spatial_ref_sys(srs_id))""",
          """
          CREATE TABLE gpkg_geometry_columns (
            table_name TEXT NOT NULL,
            column_name TEXT NOT NULL,
            geometry_type_name TEXT NOT NULL,
            srs_id INTEGER NOT NULL,
            z TINYINT NOT NULL,
            m TINYINT NOT NULL,
            CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name),
            CONSTRAINT uk_gc_table_name UNIQUE (table_name),
            CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name),
            CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id))""",
          """
          CREATE TABLE gpkg_extensions (
            table_name TEXT,
            column_name TEXT,
            extension_name TEXT NOT NULL,
            definition TEXT NOT NULL,
            scope TEXT NOT NULL,
            CONSTRAINT ge_tce UNIQUE (table_name, column_name, extension_name))""");

  private static final String PUT =
      "INSERT OR REPLACE INTO \"rtree_%1$s_geom\" VALUES (NEW.fid, ST_MinX(NEW.geom),"
          + " ST_MaxX(NEW.geom), ST_MinY(NEW.geom), ST_MaxY(NEW.geom)); ";
  private static final String FULL = "(NEW.geom NOTNULL AND NOT ST_IsEmpty(NEW.geom))";
  private static final String EMPTY = "(NEW.geom ISNULL OR ST_IsEmpty(NEW.geom))";
  private static final String TAKE = "DELETE FROM \"rtree_%1$s_geom\" WHERE id = OLD.fid; ";

  private GeoPackageSql() {}

  static String featureTable(String name, String geometryType, List<Column> columns) {
    List<String> parts = new ArrayList<>();
    parts.add("fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL");
    parts.add("geom " + geometryType);
    Set<String> used = new HashSet<>(Set.of("fid", "geom"));
    for (Column column : columns) {
      parts.add(quoted(unused(column.property(), used)) + " " + type(column.kind()));
    }
    return "CREATE TABLE " + quoted(name) + " (" + String.join(", ", parts) + ")";
  }

  /** Column names are blind to case. */
  private static String unused(String property, Set<String> used) {
    String name = property;
    for (int i = 2; !used.add(name.toLowerCase(Locale.ROOT)); i++) {
      name = property + "_" + i;
    }
    return name;
  }

  private static String quoted(String name) {
    return '"' + name.replace("\"", "\"\"") + '"';
  }

  private static String type(Column.Kind kind) {
    return switch (kind) {
      case TEXT -> "TEXT";
      case REAL -> "REAL";
      case INTEGER -> "INTEGER";
      case TRUTH -> "BOOLEAN";
    };
  }

  /** The triggers that keep the index of a layer true when a GIS program edits it. */
  static List<String> indexTriggers(String layer) {
    return List.of(
        trigger(layer, "insert", "AFTER INSERT", FULL, PUT),
        trigger(layer, "update1", "AFTER UPDATE OF geom", "OLD.fid = NEW.fid AND " + FULL, PUT),
        trigger(layer, "update2", "AFTER UPDATE OF geom", "OLD.fid = NEW.fid AND " + EMPTY, TAKE),
        trigger(layer, "update3", "AFTER UPDATE", "OLD.fid != NEW.fid AND " + FULL, TAKE + PUT),
        trigger(
            layer,
            "update4",
            "AFTER UPDATE",
            "OLD.fid != NEW.fid AND " + EMPTY,
            "DELETE FROM \"rtree_%1$s_geom\" WHERE id IN (OLD.fid, NEW.fid); "),
        trigger(layer, "delete", "AFTER DELETE", "OLD.geom NOT NULL", TAKE));
  }

  private static String trigger(
      String layer, String name, String event, String condition, String action) {
    return ("CREATE TRIGGER \"rtree_%1$s_geom_"
            + name
            + "\" "
            + event
            + " ON \"%1$s\" WHEN "
            + condition
            + " BEGIN "
            + action
            + "END")
        .formatted(layer);
  }
}
