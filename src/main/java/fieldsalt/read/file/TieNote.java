package fieldsalt.read.file;

import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.geo.SourceSystem;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;

/** Tells how well coordinates in a system are tied to WGS 84, if that shows on a map of fields. */
public final class TieNote {
  private final String where;
  private final SourceSystem source;
  private Optional<SourceSystem.Tie> worst = Optional.empty();

  public TieNote(String where, SourceSystem source) {
    this.where = where;
    this.source = source;
  }

  /** Remembers the tie for the middle of a box in degrees if it is worse than those before. */
  public void at(Envelope degrees) {
    SourceSystem.Tie tie = source.tieAt(degrees.centre().x, degrees.centre().y);
    if (worst.isEmpty() || metres(tie) > metres(worst.get())) {
      worst = Optional.of(tie);
    }
  }

  private static double metres(SourceSystem.Tie tie) {
    return tie.accuracyM().orElse(Double.MAX_VALUE);
  }

  /** A finding, if the worst is coarse. */
  public void tell(Notes notes) {
    worst
        .filter(SourceSystem.Tie::isCoarse)
        .ifPresent(
            tie ->
                notes.finding(
                    Code.DATUM_SHIFT,
                    Place.file(where),
                    "coordinates in " + source.name(),
                    "moved to WGS 84 (" + tie.name() + "), " + howGood(tie)));
  }

  private static String howGood(SourceSystem.Tie tie) {
    return tie.accuracyM().isPresent()
        ? "good to "
            + Math.round(tie.accuracyM().getAsDouble())
            + " m: all of it may lie that far off, to one side"
        : "whose accuracy nobody states: all of it may lie some metres off, to one side";
  }
}
