package fieldsalt.surface.choice;

import fieldsalt.surface.fit.SurfaceMethod;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Settings of this stage.
 *
 * @param method AUTO, or one that is wanted whatever leave-one-out says
 * @param cellM side of a cell in metres; empty for 5 m up to 100 ha of fields, 10 m up to 1,000 ha,
 *     20 m above
 * @param maxCellM what an automatic cell never exceeds (half of the narrowest zone), metres
 * @param believed ids of sites whose readings a person has confirmed: they are never in doubt
 */
public record SurfaceSettings(
    SurfaceMethod method, OptionalDouble cellM, double maxCellM, Set<String> believed) {
  public SurfaceSettings {
    believed = Set.copyOf(believed);
    if (cellM.isPresent() && !(cellM.getAsDouble() > 0)) {
      throw new IllegalArgumentException("cell-m must be greater than 0, was " + cellM);
    }
    if (!(maxCellM > 0)) {
      throw new IllegalArgumentException("the largest cell must exceed 0 m, was " + maxCellM);
    }
  }

  /** Everything automatic, cells no wider than 12 m. */
  public static SurfaceSettings defaults() {
    return new SurfaceSettings(SurfaceMethod.AUTO, OptionalDouble.empty(), 12, Set.of());
  }

  public SurfaceSettings withCellM(double other) {
    return new SurfaceSettings(method, OptionalDouble.of(other), maxCellM, believed);
  }
}
