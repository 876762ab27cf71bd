package fieldsalt.plan.draw;

/**
 * Where a zone's value of a soil property comes from, from firm to loose.
 *
 * @param workedOut whether it was worked out from another property (ESP from SAR)
 * @param sites of the field at which it, or what it was worked out from, was measured
 */
public record Known(Source source, int sites, boolean workedOut) {
  public Known(Source source, int sites) {
    this(source, sites, false);
  }

  /** The same, for a property worked out from it. */
  public Known asWorkedOut() {
    return new Known(source, sites, true);
  }

  /** The kinds of source. */
  public enum Source {
    /** The surface through the field's own sites. */
    SURFACE("mapped from the field's own sites"),
    /** The mean of the few sites of the field. */
    FIELD_MEAN("mean of the field's few sites"),
    /** Nothing measured: the texture's usual value. */
    TEXTURE("usual value of the texture, not measured"),
    /** Nothing is known. */
    NONE("not known");

    private final String label;

    Source(String label) {
      this.label = label;
    }

    public String label() {
      return label;
    }
  }

  public static Known nothing() {
    return new Known(Source.NONE, 0);
  }

  public boolean isKnown() {
    return source != Source.NONE;
  }
}
