package fieldsalt.report;

import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.classes.ClassScheme;
import fieldsalt.classes.ClassSchemes;
import fieldsalt.facts.Crops;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.gaussian.Normal;
import fieldsalt.geo.PlaceM;
import fieldsalt.geo.Projections;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.Texture;
import fieldsalt.quantity.UnitSystem;
import fieldsalt.read.Ranch;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.report.input.PageInput;
import fieldsalt.report.input.PageReadings;
import fieldsalt.report.input.PageReadings.Factor;
import fieldsalt.report.input.PageReadings.Kind;
import fieldsalt.report.input.PageReadings.Pair;
import fieldsalt.report.input.PageReadings.PairPlot;
import fieldsalt.report.input.PageSettings;
import fieldsalt.report.input.PageSurface;
import fieldsalt.report.input.PageSurface.AccuracyPoint;
import fieldsalt.report.input.PageSurface.NextMeasurement;
import fieldsalt.report.input.PageSurface.VariogramBin;
import fieldsalt.report.input.PageZone;
import fieldsalt.report.input.ZoneAdvice;
import fieldsalt.report.input.ZoneAdvice.PlannedAmount;
import fieldsalt.sample.InventedField;
import fieldsalt.sample.InventedRanch;
import fieldsalt.sample.LabRow;
import fieldsalt.surface.covariance.Exponential;
import fieldsalt.surface.fit.Accuracy;
import fieldsalt.surface.fit.SurfaceDetails;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.fit.SurfaceReport;
import fieldsalt.surface.fit.SurfaceReport.Candidate;
import fieldsalt.surface.fit.SurfaceReport.FittedVariogram;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.next.Proposal;
import fieldsalt.surface.site.Grid;
import fieldsalt.zones.field.Zone;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/** A page's input from the invented ranch, made by hand: its zones follow the truth. */
public final class PageFixture {
  private static final double CELL = 20;
  private static final Crops CROPS = Crops.standard();
  private static final GeometryFactory JTS = new GeometryFactory();
  private static final InventedRanch RANCH = InventedRanch.ofThree(2);
  private static final Map<String, Geometry> SHAPES = new java.util.HashMap<>();
  private static final Map<String, Double> TRUTH = new java.util.HashMap<>();
  final InventedRanch ranch = RANCH;
  String ranchName = "Open Sea Ranch (invented)";
  SurfaceMethod chosen = SurfaceMethod.KRIGING;
  UnitSystem units = UnitSystem.METRIC;
  final Map<String, String> renamed = new LinkedHashMap<>();
  final List<Finding> findings = new ArrayList<>(findings());

  public PageInput input() {
    Map<String, ClassScheme> schemes = new LinkedHashMap<>();
    ranch.fields().forEach(f -> schemes.put(name(f), scheme(f)));
    return new PageInput(
        new Ranch(
            ranchName,
            Projections.utmFor(-153, 30),
            ranch.fields().stream().map(this::boundary).toList(),
            List.of(),
            List.of(),
            Map.of("samples.csv", "0".repeat(64)),
            List.of()),
        new PageSettings(units, "0.1.0", crops(), Map.of(), 4_047),
        readings(),
        sites(),
        surface(),
        schemes,
        ranch.fields().stream().flatMap(f -> zones(f).stream()).toList(),
        findings,
        List.of("Maas E.V., Grattan S.R. 1999. Crop yields as affected by salinity."));
  }

  private static double truth(InventedField f, double x, double y) {
    return TRUTH.computeIfAbsent(f.name() + x + " " + y, k -> RANCH.lnEce(f.name(), x, y));
  }

  private String name(InventedField field) {
    return renamed.getOrDefault(field.name(), field.name());
  }

  private FieldBoundary boundary(InventedField f) {
    return new FieldBoundary(
        name(f), f.shapeM(), Optional.of(f.crop()), Texture.UNKNOWN, OptionalDouble.empty());
  }

  private Map<String, String> crops() {
    Map<String, String> crops = new LinkedHashMap<>();
    ranch.fields().forEach(f -> crops.put(name(f), CROPS.find(f.crop()).crop().name()));
    return crops;
  }

  private ClassScheme scheme(InventedField f) {
    return ClassSchemes.forCrop(name(f), Optional.of(CROPS.find(f.crop()).crop()), 0.25, false)
        .scheme();
  }

  private List<PageZone> zones(InventedField f) {
    ClassScheme scheme = scheme(f);
    List<PageZone> zones = new ArrayList<>();
    for (int k = 0; k < scheme.labels().size(); k++) {
      int klass = k;
      Geometry shape = SHAPES.computeIfAbsent(f.name() + k, key -> cells(f, scheme, klass));
      if (shape.getArea() > 4_000) {
        zones.add(zone(f, scheme, k, shape, zones.size() + 1));
      }
    }
    return zones;
  }

  private Geometry cells(InventedField f, ClassScheme scheme, int klass) {
    Envelope box = f.shapeM().getEnvelopeInternal();
    List<Geometry> cells = new ArrayList<>();
    for (double x = box.getMinX(); x < box.getMaxX(); x += CELL) {
      for (double y = box.getMinY(); y < box.getMaxY(); y += CELL) {
        double ece = Math.exp(truth(f, x + CELL / 2, y + CELL / 2));
        if (scheme.classOf(ece) == klass) {
          cells.add(JTS.toGeometry(new Envelope(x, x + CELL, y, y + CELL)));
        }
      }
    }
    Geometry union = cells.isEmpty() ? JTS.createPolygon() : UnaryUnionOp.union(cells);
    return DouglasPeuckerSimplifier.simplify(union, 15).intersection(f.shapeM());
  }

  private PageZone zone(InventedField f, ClassScheme scheme, int k, Geometry shape, int number) {
    double low = k == 0 ? scheme.breaks().get(0) * 0.8 : scheme.breaks().get(k - 1) * 1.1;
    Zone zone = new Zone(name(f) + "-" + number, name(f), k, scheme.labels().get(k), shape);
    return new PageZone(
        zone,
        low * 0.8,
        low,
        low * 1.25,
        k == 0 ? 0.3 : 0.93,
        OptionalDouble.of(Math.max(0, 100 - 15.0 * k)),
        k == 0 ? fine() : k < 3 ? leach() : gypsum());
  }

  private static final List<String> EVERYWHERE =
      List.of(
          "Drainage first: without a way out for the water the salt comes back.",
          "Local rules on drainage water apply; a licensed adviser signs before money is spent.");

  private static ZoneAdvice fine() {
    return new ZoneAdvice(
        "Nothing to treat",
        "Nothing here asks for treatment for this crop.",
        "",
        "Chance that it needs leaching at all: 30 %.",
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        EVERYWHERE);
  }

  private static ZoneAdvice leach() {
    return new ZoneAdvice(
        "Leach once, then keep the leaching fraction",
        "Salt is the trouble, sodium is not; gypsum will not help, water that drains away will.",
        "180 (120 to 260) mm of water through the soil",
        "Chance that it is needed: 93 %.",
        List.of(),
        List.of("See that water can leave", "Leach with 180 mm", "Resample"),
        List.of("Salt holds the crop back here."),
        List.of(new PlannedAmount("Water through the soil", "180 (120 to 260) mm")),
        EVERYWHERE);
  }

  private static ZoneAdvice gypsum() {
    return new ZoneAdvice(
        "Gypsum, then leach",
        "Salt and too much sodium: washing out the salt alone can seal the soil.",
        "4.1 (2.6 to 6.0) t/ha of gypsum, then 240 (150 to 380) mm of water",
        "Rests on 5 sodium samples; chance that it is needed: 71 %.",
        List.of("two more SAR samples in this zone"),
        List.of("Drainage", "Gypsum worked in", "Leach"),
        List.of("Sodium closes the soil."),
        List.of(new PlannedAmount("Gypsum", "4.1 (2.6 to 6.0) t/ha")),
        List.of(
            EVERYWHERE.get(0), EVERYWHERE.get(1), "Boron and chloride were not measured here."));
  }

  private static PageReadings readings() {
    Factor prior = new Factor(9.5, 0.22);
    Factor posterior = new Factor(8.1, 0.06);
    List<Pair> pairs = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      double ec = 0.1 * Math.pow(1.28, i);
      pairs.add(new Pair("N" + i, ec, 8.1 * ec * Math.exp(0.2 * Math.sin(5 * i)), i == 7));
    }
    return new PageReadings(
        List.of(
            new Kind(
                "Lab A, 1:5 extract, medium",
                66,
                "default multiplier",
                "Slavich P.G., Petterson G.H. 1993. Australian Journal of Soil Research 31: 73-81.",
                prior,
                posterior,
                12,
                0.055),
            new Kind(
                "Lab A, 1:1 extract, fine",
                48,
                "default multiplier",
                "Zhang H. et al. 2005. Soil Science Society of America Journal 69: 1146-1151.",
                new Factor(1.95, 0.2),
                new Factor(1.95, 0.2),
                0,
                0.12),
            new Kind(
                "Lab B, saturated paste",
                59,
                "none needed",
                "",
                new Factor(1, 0),
                new Factor(1, 0),
                0,
                0)),
        List.of(new PairPlot("Lab A, 1:5 extract, medium", pairs, prior, posterior)));
  }

  private SiteReadings sites() {
    Map<String, List<LabRow>> bySite = new LinkedHashMap<>();
    ranch.rows().forEach(r -> bySite.computeIfAbsent(r.id(), id -> new ArrayList<>()).add(r));
    List<SiteReadings.Site> sites = new ArrayList<>();
    List<SiteReadings.Row> rows = new ArrayList<>();
    bySite.forEach(
        (id, of) -> {
          boolean paste = of.stream().anyMatch(r -> r.method() == Method.PASTE);
          rows.add(new SiteReadings.Row(sites.size(), 1, 0.01, List.of(), paste, "", ""));
          String field = name(ranch.field(of.get(0).field()));
          sites.add(new SiteReadings.Site(id, field, of.get(0).place(), Optional.empty()));
        });
    return new SiteReadings(
        "ECe", "dS/m", Scale.LOG, sites, rows, List.of(), new double[0][0], List.of());
  }

  private PageSurface surface() {
    List<VariogramBin> bins = new ArrayList<>();
    List<AccuracyPoint> accuracy = new ArrayList<>();
    for (int i = 1; i < 11; i++) {
      bins.add(new VariogramBin(50 * i, 0.08 + 0.45 * (1 - Math.exp(-i / 5.0)), 30 + 9 * i));
      accuracy.add(new AccuracyPoint(i / 11.0, Math.pow(i / 11.0, 1.1)));
    }
    return new PageSurface(
        new SurfaceReport(
            chosen,
            "kriging has the lowest CRPS, by more than its standard error against the mean.",
            List.of(
                new Candidate(SurfaceMethod.MEAN, 76, 0.62, 0.5, 0.01, 0.35, 1.02, 0.5, 0.9),
                new Candidate(
                    SurfaceMethod.KRIGING, 76, 0.38, 0.29, -0.01, 0.21, 0.97, 0.42, 0.89)),
            new FittedVariogram(new Exponential(240), 0.44, 240, 120, 560, 0.03, -40, true, false),
            List.of(),
            List.of(),
            SurfaceDetails.none(),
            Optional.of(new Accuracy(76, 0.38, 0.62, 0.89)),
            Optional.empty(),
            Optional.empty()),
        List.of(map()),
        bins,
        accuracy,
        List.of(
            new NextMeasurement(
                "Saturated paste of the stored sample N07",
                "it stands for 30 sites read only as 1:5",
                name(ranch.field("north")),
                new PlaceM(300, 300),
                Proposal.Kind.PASTE_RERUN,
                12,
                9,
                21),
            new NextMeasurement(
                "A new site in creek",
                "the widest gap between sites",
                name(ranch.field("creek")),
                new PlaceM(1500, 300),
                Proposal.Kind.NEW_SITE,
                5,
                8.4,
                18)));
  }

  private SurfaceMap map() {
    Grid grid = new Grid(-10, 620, CELL, 95, 48);
    short[] fieldOf = new short[grid.cells()];
    float[] median = new float[grid.cells()];
    float[] error = new float[grid.cells()];
    float[] chance = new float[grid.cells()];
    List<InventedField> fields = ranch.fields();
    double[] limits = fields.stream().mapToDouble(f -> scheme(f).limitDsPerM()).toArray();
    for (int i = 0; i < grid.cells(); i++) {
      double x = grid.centreX(i % grid.columns());
      double y = grid.centreY(i / grid.columns());
      fieldOf[i] = -1;
      median[i] = error[i] = chance[i] = Float.NaN;
      for (short k = 0; k < fields.size(); k++) {
        if (fields.get(k).shapeM().contains(JTS.createPoint(new Coordinate(x, y)))) {
          double ln = truth(fields.get(k), x, y);
          double limit = Math.log(limits[k]);
          fieldOf[i] = k;
          median[i] = (float) Math.exp(ln);
          error[i] = 0.35f;
          chance[i] = (float) Normal.below((ln - limit) / 0.35);
        }
      }
    }
    return new SurfaceMap(
        grid,
        fields.stream().map(this::name).toList(),
        fieldOf,
        median,
        error,
        chance,
        new BitSet());
  }

  private static List<Finding> findings() {
    return List.of(
        new Finding(
            Code.DUPLICATE_ROW,
            Place.file("samples.csv row 59, site N20"),
            "the same reading as row 58",
            "one of them is used"),
        new Finding(
            Code.UNIT_MISSING,
            Place.file("samples.csv row 133, site N06"),
            "7.92 without a unit",
            "taken as dS/m, as all of the file fits"),
        new Finding(
            Code.NEAR_FIELD,
            Place.file("samples.csv row 170, site C12"),
            "3 m outside creek",
            "given to creek"),
        new Finding(
            Code.UNIT_SLIP,
            Place.file("samples.csv row 236, site G4"),
            "EC 4000 dS/m",
            "left out; if it is 4,000 µS/cm, write that unit"),
        new Finding(
            Code.NOT_A_NUMBER,
            Place.file("samples.csv row 25, site N09"),
            "\"ND\"",
            "row left out"));
  }
}
