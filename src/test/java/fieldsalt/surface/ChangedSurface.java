package fieldsalt.surface;

import fieldsalt.surface.choice.SurfaceSettings;
import fieldsalt.surface.fit.SurfaceMethod;

/** Settings and findings of tests that differ in one thing. */
public final class ChangedSurface {
  private ChangedSurface() {}

  public static SurfaceSettings withMaxCellM(SurfaceSettings s, double other) {
    return new SurfaceSettings(s.method(), s.cellM(), other, s.believed());
  }

  public static SurfaceSettings withMethod(SurfaceSettings s, SurfaceMethod other) {
    return new SurfaceSettings(other, s.cellM(), s.maxCellM(), s.believed());
  }
}
