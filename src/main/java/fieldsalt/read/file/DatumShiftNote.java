package fieldsalt.read.file;

import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.geo.SourceSystem;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;

/** Notes how far the shift of coordinates to WGS 84 may be wrong, if a map of fields shows it. */
public final class DatumShiftNote {
  private final String where;
  private final SourceSystem source;
  private Optional<SourceSystem.Tie> worst = Optional.empty();

  public DatumShiftNote(String where, SourceSystem source) {
    this.where = where;
    this.source = source;
  }

  /** Keeps the shift at the middle of a box in degrees if it is less accurate than those before. */
  public void add(Envelope degrees) {
    SourceSystem.Tie tie = source.tieAt(degrees.centre().x, degrees.centre().y);
    if (worst.isEmpty() || metres(tie) > metres(worst.get())) {
      worst = Optional.of(tie);
    }
  }

  private static double metres(SourceSystem.Tie tie) {
    return tie.accuracyM().orElse(Double.MAX_VALUE);
  }

  /** Adds a finding if the worst shift is coarse. */
  public void noteIn(Notes notes) {
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
        ? "accurate to "
            + Math.round(tie.accuracyM().getAsDouble())
            + " m: everything may be shifted by that much in one direction"
        : "of unknown accuracy: everything may be shifted by some metres in one direction";
  }
}
