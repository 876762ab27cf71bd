package fieldsalt.handover.table;

import fieldsalt.finding.Finding;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * A Shapefile of polygons (ESRI white paper of July 1998): shells with the clock, holes against it,
 * parts of a multipolygon in one record; with index, table, system and code page beside it.
 */
public final class ShapefileWriter {
  private static final int POLYGON = 5;
  private static final int HEADER_BYTES = 100;

  private ShapefileWriter() {}

  /**
   * Writes {@code base.shp}, {@code .shx}, {@code .dbf}, {@code .cpg} and {@code .prj}.
   *
   * @param wkt of the layer's system in ESRI's spelling; empty for a local one, without {@code
   *     .prj}
   * @return the text that had to be cut to the 254 bytes that a table's cell holds
   */
  public static List<Finding> write(Path folder, String base, Layer layer, Optional<String> wkt)
      throws IOException {
    List<byte[]> records =
        layer.features().stream().map(feature -> record(feature.shape())).toList();
    Files.write(folder.resolve(base + ".shp"), shapes(records, layer.box()));
    Files.write(folder.resolve(base + ".shx"), index(records, layer.box()));
    Files.writeString(folder.resolve(base + ".cpg"), "UTF-8");
    if (wkt.isPresent()) {
      Files.writeString(folder.resolve(base + ".prj"), wkt.get());
    }
    DbfTable table = DbfTable.of(Column.of(layer.features()), layer.features().size());
    Files.write(folder.resolve(base + ".dbf"), table.bytes());
    return table.cutText(base + ".dbf");
  }

  private static byte[] shapes(List<byte[]> records, Envelope box) {
    int bytes = HEADER_BYTES + records.stream().mapToInt(r -> 8 + r.length).sum();
    ByteBuffer out = ByteBuffer.allocate(bytes);
    header(out, bytes, box);
    for (int i = 0; i < records.size(); i++) {
      byte[] record = records.get(i);
      out.order(ByteOrder.BIG_ENDIAN).putInt(i + 1).putInt(record.length / 2).put(record);
    }
    return out.array();
  }

  private static byte[] index(List<byte[]> records, Envelope box) {
    int bytes = HEADER_BYTES + 8 * records.size();
    ByteBuffer out = ByteBuffer.allocate(bytes);
    header(out, bytes, box);
    out.order(ByteOrder.BIG_ENDIAN);
    int at = HEADER_BYTES;
    for (byte[] record : records) {
      out.putInt(at / 2).putInt(record.length / 2);
      at += 8 + record.length;
    }
    return out.array();
  }

  private static void header(ByteBuffer out, int bytes, Envelope box) {
    out.order(ByteOrder.BIG_ENDIAN).putInt(9994).position(24).putInt(bytes / 2);
    out.order(ByteOrder.LITTLE_ENDIAN).putInt(1000).putInt(POLYGON);
    putBox(out, box);
    out.position(HEADER_BYTES);
  }

  private static void putBox(ByteBuffer out, Envelope box) {
    boolean empty = box.isNull();
    out.putDouble(empty ? 0 : box.getMinX()).putDouble(empty ? 0 : box.getMinY());
    out.putDouble(empty ? 0 : box.getMaxX()).putDouble(empty ? 0 : box.getMaxY());
  }

  private static byte[] record(Geometry shape) {
    List<Coordinate[]> rings = rings(shape);
    int points = rings.stream().mapToInt(ring -> ring.length).sum();
    ByteBuffer out =
        ByteBuffer.allocate(44 + 4 * rings.size() + 16 * points).order(ByteOrder.LITTLE_ENDIAN);
    out.putInt(POLYGON);
    putBox(out, shape.getEnvelopeInternal());
    out.putInt(rings.size()).putInt(points);
    int first = 0;
    for (Coordinate[] ring : rings) {
      out.putInt(first);
      first += ring.length;
    }
    for (Coordinate[] ring : rings) {
      for (Coordinate at : ring) {
        out.putDouble(at.x).putDouble(at.y);
      }
    }
    return out.array();
  }

  private static List<Coordinate[]> rings(Geometry shape) {
    List<Coordinate[]> rings = new ArrayList<>();
    for (int i = 0; i < shape.getNumGeometries(); i++) {
      Polygon part = (Polygon) shape.getGeometryN(i);
      rings.add(turned(part.getExteriorRing(), false));
      for (int h = 0; h < part.getNumInteriorRing(); h++) {
        rings.add(turned(part.getInteriorRingN(h), true));
      }
    }
    return rings;
  }

  private static Coordinate[] turned(LinearRing ring, boolean againstTheClock) {
    boolean isAgainst = Orientation.isCCW(ring.getCoordinateSequence());
    return isAgainst == againstTheClock ? ring.getCoordinates() : ring.reverse().getCoordinates();
  }

  static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
