package fieldsalt.report.draw;

import fieldsalt.read.Ranch;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.read.site.SurveyReading;
import fieldsalt.report.markup.Figures;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.site.Grid;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

/**
 * The survey of apparent conductivity as a picture: geometric means of squares that hold about two
 * readings each.
 *
 * @param fields in which readings lie
 */
public record SurveyPicture(SurfaceMap map, SurfacePicture picture, List<FieldBoundary> fields) {
  private static final int MOST_CELLS = 250_000;

  /** Empty without a survey. */
  public static Optional<SurveyPicture> of(Ranch ranch) {
    List<FieldBoundary> surveyed =
        ranch.fields().stream().filter(f -> isSurveyed(f, ranch.survey())).toList();
    if (surveyed.isEmpty()) {
      return Optional.empty();
    }
    SurfaceMap map = averaged(ranch.survey());
    SurfacePicture picture = SurfacePicture.scaledTo(List.of(map));
    return Optional.of(new SurveyPicture(map, picture, surveyed));
  }

  private static boolean isSurveyed(FieldBoundary field, List<SurveyReading> survey) {
    GeometryFactory jts = new GeometryFactory();
    return survey.stream()
        .map(s -> jts.createPoint(new Coordinate(s.place().xM(), s.place().yM())))
        .anyMatch(PreparedGeometryFactory.prepare(field.shapeM())::contains);
  }

  public String caption() {
    return "The survey: apparent conductivity from "
        + Figures.twoFigures(picture.least())
        + " (pale) to "
        + Figures.twoFigures(picture.most())
        + " mS/m (dark). It shows salt, clay and water together.";
  }

  private static SurfaceMap averaged(List<SurveyReading> survey) {
    Grid grid = grid(survey);
    double[] sum = new double[grid.cells()];
    int[] count = new int[grid.cells()];
    for (SurveyReading reading : survey) {
      int cell = cell(grid, reading);
      sum[cell] += Math.log(reading.ecaMsPerM());
      count[cell]++;
    }
    float[] mean = new float[grid.cells()];
    for (int i = 0; i < mean.length; i++) {
      mean[i] = count[i] == 0 ? Float.NaN : (float) Math.exp(sum[i] / count[i]);
    }
    return new SurfaceMap(grid, List.of(), new short[mean.length], mean, mean, mean, new BitSet());
  }

  private static Grid grid(List<SurveyReading> survey) {
    Envelope box = new Envelope();
    survey.forEach(s -> box.expandToInclude(s.place().xM(), s.place().yM()));
    double cells = Math.min(MOST_CELLS, Math.max(1, survey.size() / 2.0));
    double side = Math.max(1, Math.sqrt(Math.max(1, box.getArea()) / cells));
    int columns = 1 + (int) (box.getWidth() / side);
    int rows = 1 + (int) (box.getHeight() / side);
    return new Grid(box.getMinX(), box.getMaxY(), side, columns, rows);
  }

  private static int cell(Grid grid, SurveyReading reading) {
    int column = (int) ((reading.place().xM() - grid.westM()) / grid.cellM());
    int row = (int) ((grid.northM() - reading.place().yM()) / grid.cellM());
    return Math.min(grid.rows() - 1, row) * grid.columns() + Math.min(grid.columns() - 1, column);
  }
}
