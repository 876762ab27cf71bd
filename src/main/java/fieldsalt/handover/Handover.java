package fieldsalt.handover;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.handover.folder.WrittenFile;
import fieldsalt.handover.input.HandoverInput;
import fieldsalt.handover.input.MachineJob;
import fieldsalt.handover.input.SampleFeature;
import fieldsalt.handover.input.ZoneFeature;
import fieldsalt.handover.machine.TaskDataWriter;
import fieldsalt.handover.output.RatesOutput;
import fieldsalt.handover.raster.SurfaceRasters;
import fieldsalt.handover.style.Styles;
import fieldsalt.handover.table.DbfNames;
import fieldsalt.handover.table.Degrees;
import fieldsalt.handover.table.Feature;
import fieldsalt.handover.table.Fields;
import fieldsalt.handover.table.GeoJsonWriter;
import fieldsalt.handover.table.GeoPackageWriter;
import fieldsalt.handover.table.Layer;
import fieldsalt.handover.table.ShapefileWriter;
import fieldsalt.read.field.FieldBoundary;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;

/** Writes every file for GIS programs and machines into a folder. */
public final class Handover {
  /** WGS 84 as ESRI spells it. */
  private static final String WGS_84 =
      "GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],"
          + "PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]";

  private final Path folder;
  private final HandoverInput input;
  private final List<WrittenFile> files = new ArrayList<>();
  private final List<Finding> findings = new ArrayList<>();

  private Handover(Path folder, HandoverInput input) {
    this.folder = folder;
    this.input = input;
  }

  /**
   * Writes all files.
   *
   * @param folder an empty folder
   * @throws fieldsalt.finding.InputProblem if the ranch crosses the 180th meridian
   */
  public static HandoverResult write(Path folder, HandoverInput input) throws IOException {
    Handover handover = new Handover(folder, input);
    handover.geoJson();
    handover.rasters();
    handover.layers();
    handover.styles();
    handover.machine();
    return new HandoverResult(handover.files, handover.findings);
  }

  private void geoJson() throws IOException {
    Degrees degrees = new Degrees(input.projection());
    List<Feature> samples = input.samples().stream().map(SampleFeature::feature).toList();
    List<Feature> zones = zonesInDegrees(degrees);
    geoJson("zones.geojson", "the zones and their figures", zones);
    if (input.machine().isPresent()) {
      rates(input.machine().get(), zones);
    }
    geoJson("samples.geojson", "the sampled sites and their ECe", inDegrees(samples, degrees));
    if (input.projection().isLocal()) {
      findings.add(
          new Finding(
              Code.LOCAL_COORDINATES,
              Place.file("zones.geojson, samples.geojson"),
              "coordinates in metres of a local system",
              "written as metres: a GIS program must be told so, and no machine file can be made"));
    }
  }

  private List<Feature> zones() {
    return input.zones().stream().map(ZoneFeature::feature).toList();
  }

  /** Field by field, because the zones of a field tile it; in the order given. */
  private List<Feature> zonesInDegrees(Degrees degrees) {
    List<Feature> zones = new ArrayList<>(zones());
    Map<String, List<Integer>> byField = new LinkedHashMap<>();
    for (int i = 0; i < zones.size(); i++) {
      String field = input.zones().get(i).zone().field();
      byField.computeIfAbsent(field, name -> new ArrayList<>()).add(i);
    }
    for (FieldBoundary field : input.fields()) {
      List<Integer> places = byField.getOrDefault(field.name(), List.of());
      List<Geometry> rounded =
          degrees.ofZones(places.stream().map(i -> zones.get(i).shape()).toList(), field.shapeM());
      for (int k = 0; k < places.size(); k++) {
        int at = places.get(k);
        zones.set(at, zones.get(at).withShape(rounded.get(k)));
      }
    }
    return zones;
  }

  private static List<Feature> inDegrees(List<Feature> features, Degrees degrees) {
    return features.stream().map(f -> f.withShape(degrees.of(f.shape()))).toList();
  }

  private void geoJson(String name, String what, List<Feature> features) throws IOException {
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(folder.resolve(name)))) {
      GeoJsonWriter.write(out, features, input.projection().isLocal());
    }
    files.add(new WrittenFile(name, what));
  }

  private void rasters() throws IOException {
    files.addAll(
        new SurfaceRasters(input.projection(), input.labels()).write(folder, input.rasters()));
  }

  private void layers() throws IOException {
    Layer zones = new Layer("zones", "zones and their figures", false, zones());
    Layer samples =
        new Layer(
            "samples",
            "sampled sites and their ECe",
            true,
            input.samples().stream().map(SampleFeature::feature).toList());
    Layer fields =
        new Layer(
            "fields", "field boundaries", false, input.fields().stream().map(Fields::of).toList());
    GeoPackageWriter.write(
        folder.resolve("fieldsalt.gpkg"), List.of(zones, samples, fields), input.projection());
    files.add(new WrittenFile("fieldsalt.gpkg", "zones, samples and fields in one GeoPackage"));
    findings.addAll(ShapefileWriter.write(folder, "zones", zones, wkt()));
    shapefile("zones", "the zones as a Shapefile" + DbfNames.described(zones));
  }

  private Optional<String> wkt() {
    return input.projection().isLocal()
        ? Optional.empty()
        : Optional.of(input.projection().esriWkt());
  }

  private void shapefile(String name, String what) {
    files.add(new WrittenFile(name + ".shp", what));
    files.add(new WrittenFile(name + ".shx", "index of " + name + ".shp"));
    files.add(new WrittenFile(name + ".dbf", "table of " + name + ".shp"));
    files.add(new WrittenFile(name + ".cpg", "encoding of " + name + ".dbf"));
    if (!input.projection().isLocal()) {
      files.add(new WrittenFile(name + ".prj", "coordinate system of " + name + ".shp"));
    }
  }

  /** Zones with one rate column, in WGS 84: what most terminals and programs take. */
  private void rates(MachineJob machine, List<Feature> zonesInDegrees) throws IOException {
    List<Feature> rates = new ArrayList<>();
    for (int z = 0; z < zonesInDegrees.size(); z++) {
      rates.add(
          RatesOutput.of(input.zones().get(z), machine).withShape(zonesInDegrees.get(z).shape()));
    }
    geoJson("rates.geojson", "the zones with one rate column, for a machine", rates);
    Layer layer = new Layer("rates", "zones with their rate", false, rates);
    Optional<String> system = wkt().map(metres -> WGS_84);
    findings.addAll(ShapefileWriter.write(folder, "rates", layer, system));
    shapefile("rates", "the same as a Shapefile in WGS 84");
  }

  private void styles() throws IOException {
    style("zones", Styles.zones(input.zones()));
    style("ece", Styles.median(input.maps(), input.labels()));
    style("ece-error", Styles.error());
    style("p-above", Styles.chance());
  }

  private void style(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name + ".sld"), text);
    files.add(new WrittenFile(name + ".sld", "style of " + name));
  }

  private void machine() throws IOException {
    if (input.machine().isPresent() && !input.projection().isLocal()) {
      Path file = folder.resolve("TASKDATA.zip");
      findings.addAll(TaskDataWriter.write(file, input, input.machine().get()));
      files.add(new WrittenFile("TASKDATA.zip", "rates for the spreader, ISO 11783-10 task data"));
    }
  }
}
