package fieldsalt.surface.fit;

/** How the surface is made; AUTO lets leave-one-out decide between MEAN, KRIGING and DRIFT. */
public enum SurfaceMethod {
  AUTO,
  MEAN,
  KRIGING,
  DRIFT,
  IDW;

  /** As the report and the job file spell it. */
  public String label() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
