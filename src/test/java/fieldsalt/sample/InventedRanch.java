package fieldsalt.sample;

import fieldsalt.geo.PlaceM;
import fieldsalt.quantity.DepthRange;
import fieldsalt.quantity.Method;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

/**
 * An invented ranch with a known truth, the same for the same seed: ln ECe of the root zone = field
 * mean + exponential field (partial sill 0.45, distance parameter 250 m, no micro-scale part). A
 * bag of soil differs from it by the sampling error (sd of ln 0.15); all readings of a site come
 * from its bags. Layers are made around the bag's value so that their root-zone mean is that value.
 */
public final class InventedRanch {
  public static final double PARTIAL_SILL = 0.45;
  public static final double RANGE_M = 250;
  public static final double SAMPLING_SD = 0.15;
  private static final double EDGE_M = 12;
  private static final GeometryFactory JTS = new GeometryFactory();

  private final Map<String, InventedField> fields = new LinkedHashMap<>();
  private final Map<String, ExponentialField> salt = new TreeMap<>();
  private final Map<String, ExponentialField> sodium = new TreeMap<>();
  private final long seed;
  private final Random random;
  private final Laboratories laboratories;
  private final List<LabRow> rows = new ArrayList<>();

  private InventedRanch(long seed, List<InventedField> planned) {
    this.seed = seed;
    random = new Random(seed);
    for (InventedField field : planned) {
      fields.put(field.name(), field);
      salt.put(field.name(), new ExponentialField(random, PARTIAL_SILL, RANGE_M));
      sodium.put(field.name(), new ExponentialField(random, 0.05, RANGE_M));
    }
    laboratories = new Laboratories(random);
  }

  /** The whole ranch of three fields. */
  public static InventedRanch ofThree(long seed) {
    InventedRanch ranch =
        new InventedRanch(
            seed, List.of(InventedField.north(), InventedField.creek(), InventedField.garden()));
    ranch.sampleNorth();
    ranch.sampleCreek();
    ranch.sampleGarden();
    return ranch;
  }

  /** The newcomer's sample of one field, all pastes. */
  public static InventedRanch ofOne(long seed) {
    InventedRanch ranch = new InventedRanch(seed, List.of(InventedField.small()));
    for (Bag bag : ranch.bags(InventedField.small())) {
      ranch.read(bag, "Lab B", Method.PASTE, (ece, reading) -> Map.of());
    }
    return ranch;
  }

  public List<InventedField> fields() {
    return List.copyOf(fields.values());
  }

  public InventedField field(String name) {
    return fields.get(name);
  }

  /** The laboratories' rows without any blemish. */
  public List<LabRow> rows() {
    return List.copyOf(rows);
  }

  /** The truth: ln of root-zone ECe (dS/m) at a place in local metres. */
  public double lnEce(String field, double xM, double yM) {
    return fields.get(field).meanLnEce() + salt.get(field).at(xM, yM);
  }

  /** A site's soil: its name, place, texture and the true ECe of each layer's bag. */
  private record Bag(
      String id, InventedField field, PlaceM place, String texture, List<Double> layerEce) {
    double rootZoneEce() {
      double sum = 0;
      for (int k = 0; k < layerEce.size(); k++) {
        sum += layerEce.get(k) * field.layers().get(k).thicknessCm();
      }
      return sum / field.rootZoneCm();
    }
  }

  /** Cells of a row beyond its EC, from its layer, the bag's true ECe and the reading. */
  private interface Extras {
    Map<String, String> of(double ece, double reading);
  }

  private void sampleNorth() {
    List<Bag> bags = bags(fields.get("north"));
    List<Bag> bySalt = bags.stream().sorted(Comparator.comparingDouble(Bag::rootZoneEce)).toList();
    List<String> paired = evenly(bySalt, 12);
    List<String> pasteOnly =
        evenly(bySalt.stream().filter(b -> !paired.contains(b.id)).toList(), 3);
    for (Bag bag : bags) {
      if (!pasteOnly.contains(bag.id)) {
        read(bag, "Lab A", Method.ONE_TO_FIVE, (ece, reading) -> Map.of());
      }
    }
    for (Bag bag : bags) {
      if (paired.contains(bag.id) || pasteOnly.contains(bag.id)) {
        read(bag, "Lab B", Method.PASTE, (ece, reading) -> cations(reading, 3.5 + 0.25 * ece));
      }
    }
  }

  private void sampleCreek() {
    List<Bag> bags = bags(fields.get("creek"));
    List<Bag> bySalt = bags.stream().sorted(Comparator.comparingDouble(Bag::rootZoneEce)).toList();
    List<String> paired = evenly(bySalt, 4);
    for (Bag bag : bags) {
      read(bag, "Lab A", Method.ONE_TO_ONE, (ece, reading) -> sodicity(bag));
    }
    for (Bag bag : bags) {
      if (paired.contains(bag.id)) {
        read(bag, "Lab B", Method.PASTE, (ece, reading) -> Map.of());
      }
    }
  }

  private void sampleGarden() {
    for (Bag bag : bags(fields.get("garden"))) {
      read(bag, "Lab B", Method.PASTE, (ece, reading) -> cations(reading, 3));
    }
  }

  /** Names spread evenly over a sorted list. */
  private static List<String> evenly(List<Bag> sorted, int count) {
    List<String> chosen = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      chosen.add(sorted.get((int) ((i + 0.5) * sorted.size() / count)).id);
    }
    return List.copyOf(chosen);
  }

  private void read(Bag bag, String lab, Method method, Extras extras) {
    boolean micro = method == Method.ONE_TO_FIVE;
    for (int k = 0; k < bag.layerEce.size(); k++) {
      DepthRange depth = bag.field.layers().get(k);
      double ece = bag.layerEce.get(k);
      double reading = laboratories.read(lab, method, bag.texture, ece);
      rows.add(
          new LabRow(
              bag.id,
              bag.field.name(),
              bag.place,
              depth,
              method,
              Laboratories.printed(micro ? reading * 1000 : reading),
              micro ? "uS/cm" : "dS/m",
              bag.texture,
              lab,
              extras.of(ece, reading)));
    }
  }

  /** Cations of a paste extract, meq/L, that sum to 10 x EC and have this SAR. */
  private Map<String, String> cations(double ec, double sar) {
    double sum = 10 * ec * Math.exp(0.03 * random.nextGaussian());
    double half = sar / Math.sqrt(2);
    double root = (-half + Math.sqrt(half * half + 4 * sum)) / 2;
    double divalent = root * root;
    return Map.of(
        "na_meq_l", Laboratories.printed(sum - divalent),
        "ca_meq_l", Laboratories.printed(divalent * 0.65),
        "mg_meq_l", Laboratories.printed(divalent * 0.35),
        "ions_method", "paste");
  }

  /** SAR of the paste extract, CEC and bulk density, on five sites of six. */
  private Map<String, String> sodicity(Bag bag) {
    double ln = salt.get("creek").at(bag.place.xM(), bag.place.yM());
    double own = sodium.get("creek").at(bag.place.xM(), bag.place.yM());
    double sar = Math.exp(Math.log(13) + 0.45 * ln + own + 0.1 * random.nextGaussian());
    double cec = (bag.texture.equals("loam") ? 16 : 24) * Math.exp(0.08 * random.nextGaussian());
    double density = 1.38 + 0.04 * random.nextGaussian();
    if (bag.id.endsWith("6")) {
      return Map.of();
    }
    return Map.of(
        "sar", Laboratories.printed(sar),
        "ions_method", "paste",
        "cec_cmol_kg", Laboratories.printed(cec),
        "bulk_density", Laboratories.printed(density));
  }

  private List<Bag> bags(InventedField field) {
    List<Bag> bags = new ArrayList<>();
    int digits = field.sites() > 9 ? 2 : 1;
    for (PlaceM place : spread(field.shapeM(), field.sites())) {
      String number = String.format(Locale.ROOT, "%0" + digits + "d", bags.size() + 1);
      double ln = lnEce(field.name(), place.xM(), place.yM()) + SAMPLING_SD * random.nextGaussian();
      bags.add(
          new Bag(field.prefix() + number, field, place, texture(field, place), layers(field, ln)));
    }
    return bags;
  }

  private List<Double> layers(InventedField field, double lnEce) {
    double[] shape = field.shape().clone();
    double mean = 0;
    for (int k = 0; k < shape.length; k++) {
      shape[k] *= Math.exp(0.12 * random.nextGaussian());
      mean += shape[k] * field.layers().get(k).thicknessCm() / field.rootZoneCm();
    }
    List<Double> layers = new ArrayList<>();
    for (double s : shape) {
      layers.add(Math.exp(lnEce) * s / mean);
    }
    return List.copyOf(layers);
  }

  private static String texture(InventedField field, PlaceM place) {
    Envelope box = field.shapeM().getEnvelopeInternal();
    double east = (place.xM() - box.getMinX()) / box.getWidth();
    if (field.name().equals("north")) {
      return east < 0.25 ? "sandy loam" : east < 0.65 ? "loam" : "clay loam";
    }
    return field.name().equals("creek") ? (east < 0.35 ? "loam" : "clay loam") : "loam";
  }

  /** Sites spread over a shape: each the best of forty random places, farthest from the others. */
  private List<PlaceM> spread(Polygon shape, int count) {
    Geometry inside = shape.buffer(-EDGE_M);
    List<PlaceM> chosen = new ArrayList<>();
    while (chosen.size() < count) {
      PlaceM best = null;
      for (int i = 0; i < 40; i++) {
        PlaceM candidate = anywhereIn(inside);
        if (best == null || nearest(candidate, chosen) > nearest(best, chosen)) {
          best = candidate;
        }
      }
      chosen.add(best);
    }
    return chosen;
  }

  private PlaceM anywhereIn(Geometry shape) {
    Envelope box = shape.getEnvelopeInternal();
    while (true) {
      double x = box.getMinX() + random.nextDouble() * box.getWidth();
      double y = box.getMinY() + random.nextDouble() * box.getHeight();
      if (shape.contains(JTS.createPoint(new Coordinate(x, y)))) {
        return new PlaceM(x, y);
      }
    }
  }

  private static double nearest(PlaceM place, List<PlaceM> others) {
    return others.stream().mapToDouble(place::distanceM).min().orElse(Double.MAX_VALUE);
  }

  /** A point of an apparent-conductivity survey, mS/m. */
  record SurveyPoint(PlaceM place, double ecaMsPerM) {}

  /** The survey of north and creek: tracks 15 m apart, a reading every 10 m. */
  List<SurveyPoint> survey() {
    Random noise = new Random(seed);
    List<SurveyPoint> points = new ArrayList<>(survey(fields.get("north"), noise));
    points.addAll(survey(fields.get("creek"), noise));
    return List.copyOf(points);
  }

  private List<SurveyPoint> survey(InventedField field, Random noise) {
    var inside = PreparedGeometryFactory.prepare(field.shapeM());
    Envelope box = field.shapeM().getEnvelopeInternal();
    List<SurveyPoint> points = new ArrayList<>();
    for (double y = box.getMinY() + 7.5; y < box.getMaxY(); y += 15) {
      for (double x = box.getMinX() + 5; x < box.getMaxX(); x += 10) {
        PlaceM place = new PlaceM(x + noise.nextGaussian(), y + 0.7 * noise.nextGaussian());
        double eca = eca(field, place, noise.nextGaussian());
        if (inside.contains(JTS.createPoint(new Coordinate(place.xM(), place.yM())))) {
          points.add(new SurveyPoint(place, eca));
        }
      }
    }
    return points;
  }

  private double eca(InventedField field, PlaceM place, double normal) {
    Envelope box = field.shapeM().getEnvelopeInternal();
    double clay = (place.xM() - box.getMinX()) / box.getWidth() - 0.5;
    return Math.exp(
        3.55 + 0.7 * lnEce(field.name(), place.xM(), place.yM()) + 0.3 * clay + 0.12 * normal);
  }
}
