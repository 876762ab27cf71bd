package fieldsalt.geo.projection;

/** A place that a projection has no image of. */
public final class OutOfReach extends RuntimeException {
  private static final long serialVersionUID = 1;

  public OutOfReach(String what) {
    super(what);
  }

  public OutOfReach(String what, Throwable cause) {
    super(what, cause);
  }
}
