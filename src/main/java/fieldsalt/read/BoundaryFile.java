package fieldsalt.read;

import fieldsalt.finding.InputProblem;

/** Features of a boundary file, whatever its kind. */
final class BoundaryFile {
  private BoundaryFile() {}

  static GeoFeature.Collection read(InputFile file) {
    if (SheetLayout.isJson(file)) {
      return GeoJson.read(file);
    }
    throw new InputProblem(
        file.name(),
        "a file that is no GeoJSON, GeoPackage or Shapefile",
        "field boundaries as polygons",
        "Export the boundaries as GeoJSON.");
  }
}
