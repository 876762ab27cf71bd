package fieldsalt.sample;

import fieldsalt.quantity.DepthRange;
import java.util.List;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

/**
 * A field of the invented ranch, in local metres.
 *
 * @param prefix of its sites' names
 * @param meanLnEce mean of ln ECe, dS/m
 * @param layers that were sampled, together the crop's root zone
 * @param shape ECe of each layer against the root-zone mean, before it is made to average 1
 */
public record InventedField(
    String name,
    String crop,
    String prefix,
    Polygon shapeM,
    int sites,
    double meanLnEce,
    List<DepthRange> layers,
    double[] shape) {

  /** About 60 ha of alfalfa. */
  static InventedField north() {
    return new InventedField(
        "north",
        "alfalfa",
        "N",
        polygon("POLYGON ((0 0, 1020 -15, 1045 570, 25 605, 0 0))"),
        45,
        Math.log(3.6),
        layers(0, 30, 60, 120),
        new double[] {0.75, 0.95, 1.15});
  }

  /** About 35 ha of barley around a yard. */
  static InventedField creek() {
    return new InventedField(
        "creek",
        "barley",
        "C",
        polygon(
            "POLYGON ((1120 10, 1380 -70, 1720 10, 1830 190, 1690 360, 1730 530, 1480 610, 1290"
                + " 480, 1140 500, 1090 260, 1120 10), (1350 200, 1350 270, 1450 275, 1455 205,"
                + " 1350 200))"),
        24,
        Math.log(7.5),
        layers(0, 30, 100),
        new double[] {1.1, 0.95});
  }

  /** 6 ha of tomato. */
  static InventedField garden() {
    return new InventedField(
        "garden",
        "tomato",
        "G",
        polygon("POLYGON ((240 -280, 545 -290, 550 -90, 245 -85, 240 -280))"),
        7,
        Math.log(2.8),
        layers(0, 30, 90),
        new double[] {0.9, 1.05});
  }

  /** 14 ha of cotton: the newcomer's sample. */
  static InventedField small() {
    return new InventedField(
        "west",
        "cotton",
        "W",
        polygon("POLYGON ((-700 0, -300 10, -290 360, -690 350, -700 0))"),
        18,
        Math.log(7),
        layers(0, 100),
        new double[] {1});
  }

  private static Polygon polygon(String wkt) {
    try {
      return (Polygon) new WKTReader().read(wkt);
    } catch (ParseException e) {
      throw new IllegalStateException(e);
    }
  }

  private static List<DepthRange> layers(double... limits) {
    DepthRange[] layers = new DepthRange[limits.length - 1];
    for (int i = 0; i < layers.length; i++) {
      layers[i] = new DepthRange(limits[i], limits[i + 1]);
    }
    return List.of(layers);
  }

  double rootZoneCm() {
    return layers.stream().mapToDouble(DepthRange::thicknessCm).sum();
  }
}
