package fieldsalt.read.sample;

import fieldsalt.finding.Code;
import fieldsalt.finding.InputProblem;
import fieldsalt.geo.PlaceM;
import fieldsalt.geo.Projections;
import fieldsalt.geo.RanchProjection;
import fieldsalt.geo.SourceSystem;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.SourceRow;
import java.util.Optional;

/** Turns the coordinates of rows into metres of the ranch's projection. */
public final class Placing {
  private final RanchProjection projection;
  private final Optional<SourceSystem> source;
  private final boolean same;

  private Placing(RanchProjection projection, Optional<SourceSystem> source, boolean same) {
    this.projection = projection;
    this.source = source;
    this.same = same;
  }

  /**
   * For one job.
   *
   * @param crs the job's: {@code auto}, {@code local} or {@code EPSG:n}
   */
  public static Placing of(RanchProjection projection, String crs) {
    boolean coded = crs.startsWith("EPSG:");
    boolean same =
        projection.isLocal()
            || (coded
                && projection.epsg().isPresent()
                && crs.equals("EPSG:" + projection.epsg().getAsInt()));
    Optional<SourceSystem> source =
        coded && !same ? Optional.of(Projections.source(crs)) : Optional.empty();
    return new Placing(projection, source, same);
  }

  /** Whether coordinates are metres of no place on earth. */
  public boolean isLocal() {
    return projection.isLocal();
  }

  /** Whether a spot can be placed; if not the job has to name the system of x and y. */
  public boolean knows(Spot spot) {
    return spot.degrees() || same || source.isPresent();
  }

  /** Metres; empty, with a problem or a finding, where they cannot be known. */
  public Optional<PlaceM> place(Spot spot, SourceRow row, Notes notes) {
    if (!knows(spot)) {
      notes.problem(
          row.file() + " columns x, y",
          "coordinates of an unknown system",
          "the EPSG code of the system, or local",
          "Set crs: EPSG:n (or crs: local) in the job.");
      return Optional.empty();
    }
    Optional<PlaceM> place = place(spot);
    if (place.isEmpty()) {
      notes.row(
          Code.BAD_COORDINATE,
          row,
          "coordinates outside the area of their coordinate system",
          "left out; check that easting or longitude comes first");
    }
    return place;
  }

  /** Metres; empty if the system does not reach there. */
  public Optional<PlaceM> place(Spot spot) {
    try {
      if (!spot.degrees() && same) {
        return Optional.of(new PlaceM(spot.a(), spot.b()));
      }
      double[] degrees =
          spot.degrees()
              ? new double[] {spot.a(), spot.b()}
              : source.orElseThrow().toLonLat(spot.a(), spot.b());
      PlaceM place = projection.toMetres(degrees[0], degrees[1]);
      boolean finite = Double.isFinite(place.xM()) && Double.isFinite(place.yM());
      return finite ? Optional.of(place) : Optional.empty();
    } catch (InputProblem | IllegalArgumentException | ArithmeticException e) {
      // beyond the reach of the projection, in our words or in the registry's
      return Optional.empty();
    }
  }

  /** {longitude, latitude} of a row's coordinates, before there is a projection; empty if none. */
  public static Optional<double[]> degrees(Spot spot, String crs) {
    if (spot.degrees()) {
      return Optional.of(new double[] {spot.a(), spot.b()});
    }
    SourceSystem source = Projections.source(crs);
    try {
      return Optional.of(source.toLonLat(spot.a(), spot.b()));
    } catch (InputProblem | IllegalArgumentException | ArithmeticException e) {
      return Optional.empty();
    }
  }
}
